import { evaluationOf } from '@/lib/assessment/readiness/evaluation'
import type { AttemptFact, DiverRecord } from '@/lib/assessment/record'
import type { EpochDay } from '@/lib/assessment/time'
import type { Curriculum, Pair, PairKey } from '@/lib/curriculum/edition/curriculum'
import { indexEdition } from '@/lib/curriculum/edition/index-edition'
import type { EditionDocument, Rating } from '@/lib/curriculum/model'
import { allRated, anAttempt, aRecord, aSignOff, endOf } from '@/tests/support/record'
import { tinyEdition } from '@/tests/support/tiny-edition'

/** The day on which worked cases ask: 2026-03-07. */
export const today: EpochDay = 20_519

export const curriculumOf = (overrides: Partial<EditionDocument> = {}): Curriculum =>
  indexEdition(tinyEdition(overrides), '0'.repeat(64))

export const coast = curriculumOf()

export function pairIn(curriculum: Curriculum, key: PairKey): Pair {
  const pair = curriculum.pairs.get(key)
  if (!pair) throw new Error(`the small edition has no ${key}`)
  return pair
}

/** A called attempt with every criterion rated the same. */
export const dived = (
  key: PairKey,
  day: EpochDay,
  rating: Rating = 4,
  changes: Parameters<typeof anAttempt>[2] = {},
): AttemptFact => anAttempt(key, day, { rated: allRated(pairIn(coast, key), rating), ...changes })

/** A called attempt that is sound but for one criterion. */
export const divedBut = (
  key: PairKey,
  day: EpochDay,
  but: Readonly<Record<string, Rating>>,
  changes: Parameters<typeof anAttempt>[2] = {},
): AttemptFact => anAttempt(key, day, { rated: { ...allRated(pairIn(coast, key), 4), ...but }, ...changes })

/** Two sound attempts by two coaches on two days: what the standard of the small edition asks. */
export const shown = (key: PairKey, day: EpochDay): AttemptFact[] => [
  dived(key, day - 1, 4, { coach: 'ann' }),
  dived(key, day, 4, { coach: 'ben' }),
]

/** A record in which each pair was shown and signed on `day`, at the lowest level that teaches it. */
export function holding(keys: readonly PairKey[], day: EpochDay, changes: Partial<DiverRecord> = {}): DiverRecord {
  const own = aRecord({
    attempts: keys.flatMap((key) => shown(key, day)),
    signOffs: keys.map((key) => aSignOff(key, pairIn(coast, key).at.level, day)),
  })
  return {
    ...own,
    ...changes,
    attempts: [...own.attempts, ...(changes.attempts ?? [])],
    signOffs: [...own.signOffs, ...(changes.signOffs ?? [])],
  }
}

/** As `holding`, but signed at the highest level: nothing is left to sign. */
export function holdingAll(keys: readonly PairKey[], day: EpochDay, changes: Partial<DiverRecord> = {}): DiverRecord {
  const record = holding(keys, day, changes)
  return { ...record, signOffs: record.signOffs.map((one) => ({ ...one, level: 'three' })) }
}

/** One diver of the small edition as of the end of a day. */
export const asked = (record: DiverRecord, day: EpochDay = today, curriculum: Curriculum = coast) =>
  evaluationOf(curriculum, record, endOf(day))
