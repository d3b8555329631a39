import type { Curriculum, PairKey } from '../curriculum/edition/curriculum'
import type { DiverRecord } from './record'
import type { EpochDay, Instant } from './time'

/** A recognition lapses after this many days unless it is shown. */
export const recognitionDays = 120

/** What gives a holding: a sign-off, or a head coach's recognition of what was held before. */
export interface Signed {
  readonly id: string
  readonly kind: 'sign-off' | 'recognition'
  readonly pair: PairKey
  /** Level index in the evaluating edition. */
  readonly level: number
  readonly at: Instant
  readonly day: EpochDay
  /** Attempts that were cited. */
  readonly evidence: readonly string[]
  readonly byOverride: boolean
  readonly revoked: boolean
}

/**
 * Everything that was signed or recognised at (skill, place) pairs, oldest first. `record` is as of the date. What was
 * signed at a level that the edition neither has nor maps can be put in no order, and covers nothing: it is left out.
 */
export function listSigned(curriculum: Curriculum, record: DiverRecord): Signed[] {
  const signOffs = record.signOffs.map(
    (fact): Signed => ({
      id: fact.id,
      kind: 'sign-off',
      pair: fact.pair,
      level: curriculum.levelIndex(fact.level),
      at: fact.signedAt,
      day: fact.day,
      evidence: fact.evidence,
      byOverride: fact.waiver !== null,
      revoked: fact.revokedAt !== null,
    }),
  )
  const recognised = record.recognitions.flatMap((fact): Signed[] =>
    fact.what.kind !== 'holding'
      ? []
      : [
          {
            id: fact.id,
            kind: 'recognition',
            pair: fact.what.pair,
            level: curriculum.levelIndex(fact.what.level),
            at: fact.recognisedAt,
            day: fact.day,
            evidence: [],
            byOverride: false,
            revoked: fact.revokedAt !== null,
          },
        ],
  )
  return [...signOffs, ...recognised]
    .filter(({ level }) => level >= 0)
    .sort((a, b) => a.at - b.at || (a.id < b.id ? -1 : 1))
}
