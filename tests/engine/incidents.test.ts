import { fileURLToPath } from 'node:url'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { standDownsOn } from '@/lib/assessment/block'
import { openIncidents, pausedAsAt, signedUnaware } from '@/lib/assessment/incident'
import { isClosed } from '@/lib/assessment/open'
import { evaluationOf } from '@/lib/assessment/readiness/evaluation'
import { remaining } from '@/lib/assessment/readiness/remaining'
import { listTargets, readTarget } from '@/lib/assessment/readiness/targets'
import type { DiverRecord, IncidentKind } from '@/lib/assessment/record'
import type { Curriculum, PairKey } from '@/lib/curriculum/edition/curriculum'
import { indexEdition } from '@/lib/curriculum/edition/index-edition'
import { canRestOn } from '@/lib/curriculum/tree/resting-on'
import { readCurriculum } from '@/seed/read-curriculum'
import { aDecision, anIncident, aRecord, aSignOff, aStandDown, endOf, noonOf } from '@/tests/support/record'
import { lawRuns } from '../support/effort'
import { lifeUnder } from '../support/lives'
import { asked, coast, holding, today } from '../support/small-coast'

const date = endOf(today)
const { document } = readCurriculum(fileURLToPath(new URL('../../seed/curriculum', import.meta.url)))
if (!document) throw new Error('the demo curriculum does not read')
const demo = indexEdition(document, 'd'.repeat(64))
const runs = { seed: 410_201, numRuns: lawRuns.each / 10 }
const kinds: readonly IncidentKind[] = ['contact with the board', 'too close', 'bad landing', 'knock to the head']

/** A life, and an incident on one of its last days at one of its skills: as often as not at one that was signed, on which others rest. */
const mishap = (curriculum: Curriculum) =>
  lifeUnder(curriculum).chain((life) => {
    const any = fc.constantFrom(...curriculum.pairs.keys())
    const signed = life.signOffs.map(({ pair }) => pair)
    return fc.record({
      life: fc.constant(life),
      pair: signed.length > 0 ? fc.oneof(any, fc.constantFrom(...signed)) : any,
      kind: fc.constantFrom(...kinds),
      ago: fc.integer({ min: 0, max: 30 }),
    })
  })

const closedIn = (curriculum: Curriculum, record: DiverRecord): Set<PairKey> => {
  const evaluation = evaluationOf(curriculum, record, date)
  return new Set([...curriculum.pairs.keys()].filter((key) => isClosed(evaluation, key)))
}
const readyIn = (curriculum: Curriculum, record: DiverRecord): string[] => {
  const evaluation = evaluationOf(curriculum, record, date)
  return listTargets(curriculum).filter((target) => readTarget(evaluation, target).ready)
}

describe.each([
  ['the small edition', coast],
  ['the demo curriculum', demo],
] as const)('an incident under %s', (_, curriculum) => {
  it('closes its pair, opens nothing, makes nothing ready, and leaves no trace once it is cleared', {
    timeout: lawRuns.timeout,
  }, () => {
    fc.assert(
      fc.property(mishap(curriculum), ({ life, pair, kind, ago }) => {
        const incident = anIncident(pair, today - ago, { kind })
        const before = closedIn(curriculum, life)
        const open = { ...life, incidents: [incident] }
        const after = closedIn(curriculum, open)
        expect(after.has(pair)).toBe(true)
        for (const key of before) expect(after.has(key)).toBe(true)
        const ready = readyIn(curriculum, life)
        for (const target of readyIn(curriculum, open)) expect(ready).toContain(target)
        const cleared = { ...life, incidents: [{ ...incident, clearedAt: date.instant }] }
        expect(closedIn(curriculum, cleared)).toEqual(before)
        expect(readyIn(curriculum, cleared)).toEqual(ready)
      }),
      runs,
    )
  })

  it('closes nothing that a phone without the record would not close too', { timeout: lawRuns.timeout }, () => {
    let above = 0
    fc.assert(
      fc.property(mishap(curriculum), ({ life, pair, ago }) => {
        const before = closedIn(curriculum, life)
        const after = closedIn(curriculum, { ...life, incidents: [anIncident(pair, today - ago)] })
        const couldRest = canRestOn(curriculum, pair)
        for (const key of after) {
          if (before.has(key) || key === pair) continue
          expect(couldRest.has(key)).toBe(true)
          above++
        }
      }),
      runs,
    )
    expect(above).toBeGreaterThan(0)
  })
})

describe('whether a dive was made under a pause', () => {
  const paused = (changes: Parameters<typeof anIncident>[2], at: number): number =>
    pausedAsAt(aRecord({ incidents: [anIncident('jump@1m', today, changes)] }), at).incidents.length

  it('goes by when the incident happened and was cleared, whenever it became known', () => {
    const late = { receivedAt: noonOf(today, 300) }
    expect(paused(late, noonOf(today, -1))).toBe(0)
    expect(paused(late, noonOf(today, 1))).toBe(1)
    const cleared = { clearedAt: noonOf(today, 60) }
    expect(paused(cleared, noonOf(today, 59))).toBe(1)
    expect(paused(cleared, noonOf(today, 61))).toBe(0)
  })

  it('takes an incident whose phone was ahead from when it was received', () => {
    const ahead = { happenedAt: noonOf(today + 40), receivedAt: noonOf(today) }
    expect(paused(ahead, noonOf(today, 1))).toBe(1)
  })
})

describe('what was signed before an incident was known', () => {
  const incident = anIncident('jump@1m', today - 2, { receivedAt: noonOf(today) })
  const unaware = (changes: Partial<DiverRecord>, fact = incident) => signedUnaware(asked(aRecord(changes)), fact)

  it('is named: signed after it happened and before it came in, and not revoked', () => {
    const signed = [today - 3, today - 1].map((day) => aSignOff('jump@1m', 'one', day))
    const revoked = aSignOff('jump@1m', 'two', today - 1, { revokedAt: noonOf(today - 1) })
    const decisions = [aDecision('level:one', 'approve', today - 1), aDecision('level:two', 'return', today - 1)]
    const found = unaware({ signOffs: [...signed, revoked], decisions })
    expect(found.signOffs).toEqual([signed[1]])
    expect(found.decisions).toEqual([decisions[0]])
  })

  it('is what the incident pauses: the pair, what rests on it, and after a knock to the head everything', () => {
    const keys = ['tread@poolside', 'jump@1m', '101C@1m'] as const
    const signOffs = keys.map((key) => aSignOff(key, 'one', today - 1))
    expect(unaware({ signOffs }).signOffs.map(({ pair }) => pair)).toEqual(['jump@1m', '101C@1m'])
    const knock = { ...incident, kind: 'knock to the head' } as const
    expect(unaware({ signOffs }, knock).signOffs.map(({ pair }) => pair)).toEqual(keys)
  })

  it('is nothing where it was known at once', () => {
    const signOffs = [aSignOff('jump@1m', 'one', today - 1)]
    const known = { ...incident, receivedAt: incident.happenedAt }
    expect(unaware({ signOffs }, known)).toEqual({ signOffs: [], decisions: [] })
  })
})

describe('a diver who is stood down', () => {
  it('is said to be from what closes most, whichever was written first', () => {
    const standDowns = [aStandDown('new', today - 3), aStandDown('boards', today - 2)]
    const closes = (record: DiverRecord) => standDownsOn(asked(record)).map((block) => block.closes)
    expect(closes(aRecord({ standDowns }))).toEqual(['boards', 'new'])
    const incidents = [anIncident('jump@1m', today, { kind: 'knock to the head' })]
    expect(closes(aRecord({ standDowns, incidents }))).toEqual(['water', 'boards', 'new'])
  })
})

describe('what remains', () => {
  it('counts the clearing of a knock to the head once, though it pauses and stands down', () => {
    const record = holding(['tread@poolside', 'jump@1m', '101C@1m'], today - 10)
    const decisions = (incidents: DiverRecord['incidents']) => {
      const left = remaining(asked({ ...record, incidents }), 'level:one')
      return left.kind === 'count' ? left.decisions : null
    }
    const clear = decisions([])
    const landing = anIncident('tread@poolside', today)
    expect(clear).not.toBeNull()
    expect(decisions([landing])).toBe((clear ?? 0) + 1)
    expect(decisions([{ ...landing, kind: 'knock to the head' }])).toBe((clear ?? 0) + 1)
  })
})

describe('open incidents', () => {
  it('are listed newest first', () => {
    const [old, recent] = [anIncident('jump@1m', today - 5), anIncident('101C@1m', today - 1)]
    const cleared = anIncident('tread@poolside', today, { clearedAt: noonOf(today) })
    expect(openIncidents(aRecord({ incidents: [old, cleared, recent] }))).toEqual([recent, old])
  })
})
