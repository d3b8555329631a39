import { describe, expect, it } from 'vitest'
import { aRecord, endOf } from '../../tests/support/record'
import { asked, coast, dived, holding, today } from '../../tests/support/small-coast'
import { type Recognisable, readRecognisedKey, recognisedKey, refuseRecognition } from './recognise'
import type { DiverRecord } from './record'

const words = { curriculum: coast, today }
const treading: Recognisable = { kind: 'holding', pair: 'tread@poolside', level: 'one' }
const diving: Recognisable = { kind: 'holding', pair: '101C@1m', level: 'two' }
const refusalOf = (record: DiverRecord, what: Recognisable) =>
  refuseRecognition(asked(record), what, words)?.code ?? null
const received = { receivedAt: endOf(today - 1).instant }

describe('what may be recognised', () => {
  it('is what nobody here has signed, recognised or decided', () => {
    expect(refusalOf(aRecord(), treading)).toBeNull()
    expect(refusalOf(aRecord(), { kind: 'level', level: 'one' })).toBeNull()
    expect(refusalOf(aRecord(), { kind: 'boardMove', family: 'forward', to: '3m' })).toBeNull()
    expect(refusalOf(holding(['tread@poolside'], today - 10), treading)).toBe('signed before')
    const revoked = holding(['tread@poolside'], today - 10)
    const signOffs = revoked.signOffs.map((one) => ({ ...one, revokedAt: received.receivedAt }))
    expect(refusalOf({ ...revoked, signOffs }, treading)).toBe('signed before')
  })

  it('is in the edition, at a level that teaches it', () => {
    expect(refusalOf(aRecord(), { kind: 'holding', pair: '105B@1m', level: 'one' })).toBe('unknown')
    expect(refusalOf(aRecord(), { kind: 'holding', pair: '101C@3m', level: 'one' })).toBe('unknown')
    expect(refusalOf(aRecord(), { kind: 'level', level: 'none' })).toBe('unknown')
    expect(refusalOf(aRecord(), { kind: 'boardMove', family: 'back', to: '3m' })).toBe('unknown')
  })

  it('is nothing that was seen to fall short in a critical criterion', () => {
    const short = aRecord({ attempts: [dived('101C@1m', today - 3, 1)] })
    expect(refusalOf(short, diving)).toBe('fell short')
    expect(refusalOf(aRecord({ attempts: [dived('101C@1m', today - 3, 4)] }), diving)).toBeNull()
  })

  it('is nothing while an incident pauses it, and nothing at all for a diver who is stood down', () => {
    const incident = {
      id: 'i',
      pair: '101C@1m',
      kind: 'too close',
      happenedAt: received.receivedAt,
      clearedAt: null,
      ...received,
    } as const
    expect(refusalOf(aRecord({ incidents: [incident] }), diving)).toBe('blocked')
    expect(refusalOf(aRecord({ incidents: [incident] }), treading)).toBeNull()
    const standDown = { id: 's', closes: 'new', from: today - 1, until: null, ...received } as const
    for (const what of [diving, treading, { kind: 'level', level: 'one' } as const])
      expect(refusalOf(aRecord({ standDowns: [standDown] }), what)).toBe('blocked')
  })
})

it('a key is read again as what it was written from, and nothing else is', () => {
  const all: Recognisable[] = [
    treading,
    { kind: 'level', level: 'two' },
    { kind: 'boardMove', family: 'inward', to: '3m' },
  ]
  for (const what of all) expect(readRecognisedKey(recognisedKey(what))).toEqual(what)
  for (const text of ['', 'holding:tread', 'holding:tread@poolside', 'move:forward', 'tread@poolside'])
    expect(readRecognisedKey(text)).toBeNull()
})
