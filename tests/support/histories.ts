import fc from 'fast-check'
import type { AttemptFact, DiverRecord, ObservationFact } from '@/lib/assessment/record'
import type { Curriculum, Pair } from '@/lib/curriculum/edition/curriculum'
import type { Rating } from '@/lib/curriculum/model'
import {
  aDecision,
  allRated,
  anAttempt,
  anIncident,
  anObservation,
  aRecognition,
  aRecord,
  aSignOff,
  aStandDown,
  noonOf,
} from '@/tests/support/record'
import { today } from './small-coast'

// Random histories of one diver: any facts in any order, whether or not the rules would have let them be written.
// A law that holds here holds for what coaches do.
const coaches = ['ann', 'ben', 'cleo'] as const
const spread = 240
const often = fc.integer({ min: 0, max: 9 }).map((n) => n > 0)
const seldom = often.map((yes) => !yes)
const sometimes = fc.integer({ min: 0, max: 4 }).map((n) => n === 0)
const rating: fc.Arbitrary<Rating> = fc.constantFrom<Rating>(0, 1, 2, 2, 3, 3, 3, 4, 4, 4, 4)
const day = fc.oneof(
  { weight: 3, arbitrary: fc.integer({ min: today - 50, max: today }) },
  { weight: 2, arbitrary: fc.integer({ min: today - spread, max: today }) },
)
/** Days by which the phone's upload was late. */
const late = fc.oneof({ weight: 4, arbitrary: fc.constant(0) }, { weight: 1, arbitrary: fc.nat(30) })

function ratingsOf(pair: Pair): fc.Arbitrary<Record<string, Rating>> {
  const keys = pair.criteria.map(({ criterion }) => criterion.key)
  const each = fc.record(Object.fromEntries(keys.map((key) => [key, rating])))
  const some = fc.tuple(each, fc.subarray(keys)).map(([all, kept]): Record<string, Rating> => {
    return Object.fromEntries(kept.map((key) => [key, all[key] ?? 0]))
  })
  const sound = fc.constant(allRated(pair, 4))
  const oneOff = fc.tuple(fc.constantFrom(...keys), rating).map(([key, low]) => ({ ...allRated(pair, 4), [key]: low }))
  return fc.oneof({ weight: 6, arbitrary: sound }, { weight: 3, arbitrary: oneOff }, each, some)
}

const observationOf = (pair: Pair, coach: string): fc.Arbitrary<ObservationFact> =>
  fc
    .record({
      ratings: ratingsOf(pair),
      bounds: fc.oneof({ weight: 3, arbitrary: fc.constant({}) }, ratingsOf(pair)),
      withinScope: often,
      moments: fc.nat(1),
    })
    .map(({ bounds, ...rest }) => anObservation({ id: coach, coach, imputed: bounds, ...rest }))

/** One view, and sometimes one that supersedes it, accepted or not. */
const viewOf = (pair: Pair, coach: string): fc.Arbitrary<ObservationFact[]> =>
  fc
    .tuple(observationOf(pair, coach), observationOf(pair, coach), sometimes, fc.boolean())
    .map(([first, second, corrected, accepted]) =>
      corrected
        ? [
            first,
            { ...second, id: `${coach}-again`, supersedes: coach, raiseAcceptedAt: accepted ? noonOf(today) : null },
          ]
        : [first],
    )

function attemptOf(pairs: readonly Pair[]): fc.Arbitrary<AttemptFact> {
  return fc.constantFrom(...pairs).chain((pair) =>
    fc
      .record({
        day,
        minute: fc.integer({ min: -300, max: 300 }),
        late,
        called: often,
        closedThen: seldom,
        released: fc.boolean(),
        ahead: fc.integer({ min: 0, max: 19 }).map((n) => n === 0),
        views: fc
          .subarray([...coaches], { minLength: 1, maxLength: 2 })
          .chain((who) => fc.tuple(...who.map((coach) => viewOf(pair, coach)))),
        seenLater: fc.oneof({ weight: 5, arbitrary: fc.constant(0) }, { weight: 1, arbitrary: fc.nat(20) }),
      })
      .map(({ day, minute, late, called, closedThen, released, ahead, views, seenLater }) => {
        const receivedAt = Math.min(noonOf(day + late, minute), noonOf(today, 600))
        return anAttempt(pair.key, ahead ? day + spread : day, {
          minute,
          receivedAt,
          called,
          closedThen,
          releasedAt: released ? noonOf(today) : null,
          observations: views.flat().map((view, index) => ({
            ...view,
            receivedAt: Math.min(receivedAt + (index > 0 ? seenLater * 86_400_000 : 0), noonOf(today, 600)),
          })),
        })
      }),
  )
}

function factsOf(curriculum: Curriculum, attempts: readonly AttemptFact[]): fc.Arbitrary<Partial<DiverRecord>> {
  const pair = fc.constantFrom(...curriculum.pairs.keys())
  const level = fc.constantFrom(...curriculum.levels.map(({ key }) => key))
  const target = fc.constantFrom(
    ...curriculum.levels.map(({ key }) => `level:${key}` as const),
    ...curriculum.boardMoves.map(({ family, to }) => `move:${family}:${to}` as const),
  )
  const revokedAt = seldom.map((revoked) => (revoked ? noonOf(today) : null))
  return fc.record({
    born: fc.option(fc.integer({ min: today - 5500, max: today - 2500 }), { freq: 9 }),
    signOffs: fc.array(
      fc.record({ pair, level, day, revoked: seldom, waived: seldom, cites: fc.nat(3) }).map((one) => {
        const own = attempts.filter((attempt) => attempt.pair === one.pair && attempt.day <= one.day)
        const evidence = own.slice(-one.cites - 1).map(({ id }) => id)
        return aSignOff(one.pair, one.level, one.day, {
          evidence,
          waiver: one.waived ? { coaches: true } : null,
          revokedAt: one.revoked ? noonOf(today) : null,
        })
      }),
      { maxLength: 9 },
    ),
    recognitions: fc.array(
      fc
        .tuple(
          fc.oneof(
            { weight: 4, arbitrary: fc.record({ kind: fc.constant('holding' as const), pair, level }) },
            { weight: 1, arbitrary: fc.record({ kind: fc.constant('level' as const), level }) },
            {
              weight: 1,
              arbitrary: fc.constant({ kind: 'boardMove', family: 'forward', to: '3m' } as const),
            },
          ),
          day,
          revokedAt,
        )
        .map(([what, on, revoked]) => aRecognition(what, on, { revokedAt: revoked })),
      { maxLength: 3 },
    ),
    decisions: fc.array(
      fc
        .record({
          target,
          outcome: fc.constantFrom(
            'approve' as const,
            'approve' as const,
            'override' as const,
            'return' as const,
            'withdraw' as const,
          ),
          day,
          waivesAge: fc.boolean(),
        })
        .map((one) => aDecision(one.target, one.outcome, one.day, { waivesAge: one.waivesAge })),
      { maxLength: 4 },
    ),
    incidents: fc.array(
      fc
        .tuple(pair, day, fc.boolean())
        .map(([key, on, cleared]) => anIncident(key, on, { clearedAt: cleared ? noonOf(today) : null })),
      { maxLength: 1 },
    ),
    standDowns: fc.array(
      fc
        .tuple(fc.constantFrom('water' as const, 'boards' as const, 'new' as const), day, fc.nat(40))
        .map(([closes, from, length]) => aStandDown(closes, from, { until: from + length })),
      { maxLength: 1 },
    ),
    venue: fc.array(
      fc.boolean().map((has) => ({ feature: 'board-3m', has, receivedAt: noonOf(today - spread) }) as const),
      { maxLength: 1 },
    ),
  })
}

/** Builders name facts by what they say, and the same can be drawn twice. */
const distinct = <Fact extends { readonly id: string }>(facts: readonly Fact[] = []): Fact[] =>
  facts.map((fact, index) => ({ ...fact, id: `${fact.id} #${index}` }))

/** A random history of one diver over the pairs of an edition, all of it received by the end of `today`. */
export const historyOver = (curriculum: Curriculum, attempts = 26): fc.Arbitrary<DiverRecord> =>
  // Over few of the pairs as often as over all: enough attempts at one for its windows to fill and move.
  fc
    .subarray([...curriculum.pairs.values()], { minLength: 1 })
    .chain((pairs) => fc.array(attemptOf(pairs), { maxLength: attempts, size: 'max' }))
    .map(distinct)
    .chain((all) =>
      factsOf(curriculum, all).map((facts) =>
        aRecord({
          ...facts,
          attempts: all,
          signOffs: distinct(facts.signOffs),
          recognitions: distinct(facts.recognitions),
          decisions: distinct(facts.decisions),
        }),
      ),
    )
