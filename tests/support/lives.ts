import fc from 'fast-check'
import { signable } from '@/lib/assessment/open'
import { evaluationOf } from '@/lib/assessment/readiness/evaluation'
import { listTargets, readTarget } from '@/lib/assessment/readiness/targets'
import type { AttemptFact, DecisionFact, DiverRecord, SignOffFact } from '@/lib/assessment/record'
import type { Curriculum, Pair } from '@/lib/curriculum/edition/curriculum'
import type { Rating } from '@/lib/curriculum/model'
import { aDecision, allRated, anAttempt, anObservation, aRecord, aSignOff, endOf, noonOf } from '@/tests/support/record'
import { today } from './small-coast'

/** One evening of training at one pair, and whether its coaches then sign and decide what may be signed and decided. */
interface Evening {
  readonly gap: number
  readonly pair: number
  readonly dives: readonly { readonly low: number; readonly rating: Rating; readonly called: boolean }[]
  readonly coach: string
  readonly signs: boolean
  readonly video: { readonly rating: Rating; readonly after: number } | null
}

const evening: fc.Arbitrary<Evening> = fc.record({
  gap: fc.oneof({ weight: 14, arbitrary: fc.integer({ min: 1, max: 4 }) }, fc.integer({ min: 5, max: 90 })),
  // The first skills of a curriculum are dived most: everything rests on them.
  pair: fc.tuple(fc.nat(23), fc.nat(11)).map(([a, b]) => Math.min(a, b)),
  dives: fc.array(
    fc.record({
      low: fc.nat(20),
      rating: fc.constantFrom<Rating>(1, 2, 3),
      called: fc.integer({ min: 0, max: 5 }).map((n) => n > 0),
    }),
    { minLength: 1, maxLength: 4, size: 'max' },
  ),
  coach: fc.constantFrom('ann', 'ben', 'cleo'),
  signs: fc.integer({ min: 0, max: 4 }).map((n) => n > 0),
  video: fc.oneof(
    { weight: 6, arbitrary: fc.constant(null) },
    fc.record({ rating: fc.constantFrom<Rating>(1, 2, 3, 4), after: fc.integer({ min: 1, max: 40 }) }),
  ),
})

/** Sound, but one time in four for one criterion. */
function ratingsOf(pair: Pair, low: number, rating: Rating): Record<string, Rating> {
  const key = pair.criteria[low]?.criterion.key
  return key === undefined ? allRated(pair, 4) : { ...allRated(pair, 4), [key]: rating }
}

function divesOf(pair: Pair, one: Evening, day: number): AttemptFact[] {
  return one.dives.map((dive, minute) => {
    const rated = ratingsOf(pair, dive.low, dive.rating)
    const own = anObservation({
      id: 'deck',
      coach: one.coach,
      ratings: rated,
      receivedAt: noonOf(day, minute),
      moments: 1,
    })
    const seen = one.video && minute === 0 ? one.video : null
    const video = seen && noonOf(day + seen.after)
    const views =
      seen && video && video <= endOf(today).instant
        ? [own, anObservation({ id: 'video', coach: 'dora', ratings: allRated(pair, seen.rating), receivedAt: video })]
        : [own]
    return anAttempt(pair.key, day, { minute, called: dive.called, observations: views })
  })
}

/** The sign-offs and approvals that the rules allow on an evening. */
function decide(curriculum: Curriculum, record: DiverRecord, day: number): Pick<DiverRecord, 'signOffs' | 'decisions'> {
  const then = { day, instant: noonOf(day, 360) }
  const evaluation = evaluationOf(curriculum, record, then)
  const signOffs = [...curriculum.pairs.keys()].flatMap((key): SignOffFact[] => {
    const found = signable(evaluation, key)
    return found ? [aSignOff(key, found.level, day, { by: found.by, evidence: found.evidence })] : []
  })
  const decisions = listTargets(curriculum).flatMap((target): DecisionFact[] =>
    readTarget(evaluation, target).ready ? [aDecision(target, 'approve', day)] : [],
  )
  return { signOffs, decisions }
}

function live(curriculum: Curriculum, evenings: readonly Evening[]): DiverRecord {
  const pairs = [...curriculum.pairs.values()]
  const length = evenings.reduce((sum, { gap }) => sum + gap, 0)
  let day = today - length
  let record = aRecord({
    born: today - 4500,
    venue: [{ feature: 'board-3m', has: true, receivedAt: noonOf(day) }],
  })
  for (const one of evenings) {
    day += one.gap
    const pair = pairs[one.pair % pairs.length]
    if (!pair) continue
    record = { ...record, attempts: [...record.attempts, ...divesOf(pair, one, day)] }
    if (!one.signs) continue
    const { signOffs, decisions } = decide(curriculum, record, day)
    record = {
      ...record,
      signOffs: [...record.signOffs, ...signOffs],
      decisions: [...record.decisions, ...decisions],
    }
  }
  return record
}

/** A diver's life under the rules: everything in it was signed and approved when the engine said that it may be. */
export const lifeUnder = (curriculum: Curriculum, evenings = 28): fc.Arbitrary<DiverRecord> =>
  fc
    .array(evening, { minLength: Math.floor(evenings / 2), maxLength: evenings, size: 'max' })
    .map((all) => live(curriculum, all))
