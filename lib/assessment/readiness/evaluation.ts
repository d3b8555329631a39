import type { Curriculum, PairKey } from '../../curriculum/edition/curriculum'
import type { Requirement } from '../../curriculum/requirement/model'
import { asOf, byDive } from '../as-of'
import { historyOf, type PairHistory, withAttempts } from '../history'
import { groundWith, type Holdings, readHoldings } from '../holding'
import type { AttemptFact, DiverRecord, SignOffFact } from '../record'
import type { AsOf } from '../time'
import type { Finding } from './finding'

/**
 * Where a requirement is asked. For training a recognised holding opens what rests on it; inside a level or board move
 * it counts for nothing until it was shown here.
 */
export type Context = 'training' | 'advancement'

/** One diver under one edition on one date. What is asked of it is worked out once and remembered. */
export interface Evaluation {
  readonly curriculum: Curriculum
  /** As of the date. */
  readonly record: DiverRecord
  readonly date: AsOf
  /** Undefined for a pair that the edition does not have. */
  readonly history: (pair: PairKey) => PairHistory | undefined
  readonly holdings: Holdings
  /** Findings by node, and the requirements being read just now. Written by evaluate.ts only. */
  readonly found: Readonly<Record<Context, Map<Requirement, Finding>>>
  readonly open: Set<Requirement>
}

const evaluationFrom = (parts: Omit<Evaluation, 'found' | 'open'>): Evaluation => ({
  ...parts,
  found: { training: new Map(), advancement: new Map() },
  open: new Set(),
})

/** Puts a diver's record under an edition on a date. Cheap: everything is worked out when it is first asked. */
export function evaluationOf(curriculum: Curriculum, record: DiverRecord, date: AsOf): Evaluation {
  const known = asOf(record, date)
  const attempts = new Map<PairKey, AttemptFact[]>()
  for (const attempt of known.attempts) {
    const list = attempts.get(attempt.pair)
    if (list) list.push(attempt)
    else attempts.set(attempt.pair, [attempt])
  }
  const histories = new Map<PairKey, PairHistory>()
  const history = (key: PairKey): PairHistory | undefined => {
    const read = histories.get(key)
    const pair = curriculum.pairs.get(key)
    if (read || !pair) return read
    const made = historyOf(pair, attempts.get(key) ?? [], date)
    histories.set(key, made)
    return made
  }
  const holdings = readHoldings(curriculum, known, history, date)
  return evaluationFrom({ curriculum, record: known, date, history, holdings })
}

/** What could be there besides: attempts at one pair, or sign-offs; all known by the date of the evaluation. */
export interface Imagined {
  readonly pair: PairKey
  readonly attempts: readonly AttemptFact[]
  readonly signOffs: readonly SignOffFact[]
}

/**
 * The evaluation of the same diver on the same date, with more in her record. It answers as `evaluationOf` would of the
 * longer record; the histories of other pairs, and what rests on what where that is the same, are not read again.
 */
export function imagine(evaluation: Evaluation, { pair, attempts, signOffs }: Imagined): Evaluation {
  const { curriculum, date, holdings: before } = evaluation
  const record: DiverRecord = {
    ...evaluation.record,
    attempts: [...evaluation.record.attempts, ...attempts].sort(byDive),
    signOffs: [...evaluation.record.signOffs, ...signOffs],
  }
  const own = evaluation.history(pair)
  const longer = own && withAttempts(own, attempts)
  const history = (key: PairKey) => (key === pair ? longer : evaluation.history(key))
  const ground = groundWith(before.ground, curriculum, record, signOffs)
  const holdings = readHoldings(curriculum, record, history, date, ground)
  return evaluationFrom({ curriculum, record, date, history, holdings })
}
