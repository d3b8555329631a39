import type { Curriculum, PairKey } from '../../curriculum/edition/curriculum'
import type { Requirement } from '../../curriculum/requirement/model'
import { asOf } from '../as-of'
import { historyOf, type PairHistory } from '../history'
import { type Holdings, readHoldings } from '../holding'
import type { DiverRecord } from '../record'
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

/** Puts a diver's record under an edition on a date. Cheap: everything is worked out when it is first asked. */
export function evaluationOf(curriculum: Curriculum, record: DiverRecord, date: AsOf): Evaluation {
  const known = asOf(record, date)
  const attempts = new Map<PairKey, DiverRecord['attempts'][number][]>()
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
  return {
    curriculum,
    record: known,
    date,
    history,
    holdings: readHoldings(curriculum, known, history, date),
    found: { training: new Map(), advancement: new Map() },
    open: new Set(),
  }
}
