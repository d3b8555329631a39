import type { DiveListLeaf } from '../../curriculum/requirement/model'
import { diveListOf } from '../dive-list/legality'
import type { Context, Evaluation } from './evaluation'
import type { Finding } from './finding'
import { leafFinding, notInEdition } from './leaf'

/**
 * Met by a legal list from current holdings, lapsed by one that only wants renewals, otherwise unproven: never unmet, for
 * what no list can be made of today says nothing against the diver. Age is part of the event and is not waived.
 */
export function diveListFinding(leaf: DiveListLeaf, evaluation: Evaluation, context: Context): Finding {
  const event = evaluation.curriculum.events.get(leaf.event)
  if (!event) return notInEdition(leaf, leaf.event)
  const answer = diveListOf(event, evaluation, context)
  if (answer.legal === 'no') return leafFinding(leaf, 'unproven', { code: 'no legal list', event: event.key, answer })
  const evidence = answer.list.flatMap(({ evidence }) => evidence)
  return answer.legal === 'now'
    ? leafFinding(leaf, 'met', { code: 'legal list', event: event.key, answer }, evidence)
    : leafFinding(leaf, 'lapsed', { code: 'list to renew', event: event.key, answer }, evidence)
}
