import { describe, expect, it } from 'vitest'
import { phaseAt, sayFrom } from './say'

const marks = [
  { key: 'entry', label: 'entry', time: 2.067 },
  { key: 'flight', label: 'flight', time: 1.017 },
]

describe('where a film is', () => {
  it('is said from the mark that both are laid on', () => {
    expect(sayFrom('flight', 0.2334)).toBe('flight +0.233 s')
    expect(sayFrom('flight', -0.1)).toBe('flight −0.100 s')
    expect(sayFrom('flight', -0.0001)).toBe('flight +0.000 s')
  })

  it('is the phase whose mark came last, the frame of a mark included', () => {
    expect(phaseAt(marks, 1)).toBeNull()
    expect(phaseAt(marks, 1.0167)).toBe('flight')
    expect(phaseAt(marks, 2)).toBe('flight')
    expect(phaseAt(marks, 2.067)).toBe('entry')
    expect(phaseAt([], 1)).toBeNull()
  })
})
