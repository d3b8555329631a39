import type { PairKey } from '../../curriculum/edition/curriculum'
import { pairKey } from '../../curriculum/edition/curriculum'
import type { RequirementReader } from '../../curriculum/requirement/model'
import { readRequirement } from '../../curriculum/requirement/model'
import { askedLevel } from '../rests-on'
import type { Evaluation } from './evaluation'
import type { Finding, Reason } from './finding'

/** A pair that a finding speaks of, and the level index at which it is asked. */
export interface AskedPair {
  readonly pair: PairKey
  readonly level: number
}

interface Read {
  readonly evaluation: Evaluation
  readonly reason: Reason
}

const none = (): AskedPair[] => []

const taught = (pair: PairKey, { evaluation }: Read): AskedPair => ({
  pair,
  level: evaluation.curriculum.pairs.get(pair)?.level ?? 0,
})

/** The dives of a list that was found; of one to be renewed those to renew; where there is none, what has lapsed. */
function listedPairs(reason: Reason): readonly PairKey[] {
  if (reason.code === 'legal list') return reason.answer.list.map(({ pair }) => pair)
  if (reason.code === 'list to renew') return reason.answer.renew
  return reason.code === 'no legal list' ? reason.answer.lapsed : []
}

const pairs: RequirementReader<AskedPair[], Read> = {
  all: none,
  any: none,
  atLeast: none,
  signOff: (leaf, { evaluation }) => [{ pair: pairKey(leaf), level: askedLevel(evaluation.curriculum, leaf) }],
  criterion: (leaf, read) => leaf.at.map((at) => taught(pairKey(at), read)),
  level: none,
  boardMove: none,
  age: none,
  diveList: (_, read) => listedPairs(read.reason).map((pair) => taught(pair, read)),
  venue: none,
}

/** The pairs that a finding's own node speaks of; none of a branch, level or move, whose leaves speak for themselves. */
export const pairsOf = (evaluation: Evaluation, { node, reason }: Pick<Finding, 'node' | 'reason'>): AskedPair[] =>
  readRequirement<AskedPair[], Read>(pairs, node, { evaluation, reason })
