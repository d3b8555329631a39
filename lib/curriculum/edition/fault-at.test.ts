import { describe, expect, it } from 'vitest'
import { subjectOf } from '@/lib/curriculum/lint/subject'
import type { Fault } from '@/lib/curriculum/model'
import { readCurriculumFolder } from '@/seed/read-curriculum'
import { guideOf } from '../guide/guide'
import { facetsOfSkill } from './attach'
import { faultAt } from './fault-at'

const { document } = readCurriculumFolder('seed/curriculum')
if (document === null) throw new Error('the demo curriculum cannot be read')
const { curriculum } = subjectOf(document)
const at = (key: `${string}@1m`) => {
  const pair = curriculum.pairs.get(key)
  if (!pair) throw new Error(`there is no ${key}`)
  return pair
}

const fault: Fault = {
  key: 'drifts',
  phase: 'flight',
  seen: 'Drifts',
  causes: ['One arm.', { text: 'The last step.', match: { approaches: ['running'] } }],
  corrections: [
    { kind: 'cue', text: 'Middle.', drill: null },
    { kind: 'cue', text: 'Square feet.', drill: null, match: { facing: ['in'] } },
    { kind: 'cue', text: 'Out.', drill: null, match: { directions: ['reverse'] } },
  ],
}

describe('a fault in the guide of one skill', () => {
  it('says what is said of all, and what is said of that skill', () => {
    const told = (key: `${string}@1m`) => {
      const { causes, corrections } = faultAt(fault, at(key))
      return [causes, corrections.map(({ text }) => text)]
    }
    expect(told('103B@1m')).toEqual([['One arm.', 'The last step.'], ['Middle.']])
    expect(told('201A@1m')).toEqual([['One arm.'], ['Middle.', 'Square feet.']])
    expect(told('403C@1m')).toEqual([['One arm.'], ['Middle.', 'Square feet.']])
  })

  it('follows the direction of a twisting dive, which its number states', () => {
    const reverse = [...curriculum.pairs.values()].filter(
      ({ skill }) => skill.family === 'twisting' && skill.dive && facetsOfSkill(skill).direction === 'reverse',
    )
    expect(reverse.length).toBeGreaterThan(0)
    for (const pair of reverse) expect(faultAt(fault, pair).corrections.map(({ text }) => text)).toContain('Out.')
  })

  it('is the whole fault where nothing is for some only', () => {
    const plain: Fault = { ...fault, causes: ['One arm.'], corrections: fault.corrections.slice(0, 1) }
    expect(faultAt(plain, at('201A@1m'))).toEqual(plain)
  })
})

// Common practice, no published source: facing the board nobody runs, and a reverse take-off is no back take-off.
describe('the guides of the demo curriculum', () => {
  it('send nobody who stands with the back to the water into a run, nor anybody who looks out over it to the back press', () => {
    for (const pair of curriculum.pairs.values()) {
      const { facing } = facetsOfSkill(pair.skill)
      const drills = guideOf(curriculum, pair).phases.flatMap(({ faults }) =>
        faults.flatMap(({ corrections }) => corrections.flatMap(({ drill }) => drill?.skill ?? [])),
      )
      if (facing === 'in') for (const run of ['approach', 'jump-running']) expect(drills, pair.key).not.toContain(run)
      if (facing === 'out') expect(drills, pair.key).not.toContain('back-press')
    }
  })
})
