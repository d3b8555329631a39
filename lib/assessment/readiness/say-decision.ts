import type { DecisionFact } from '../record'
import { listed, midSentence, sentence } from './grammar'
import { dayName, pairName, stepName, type Words } from './wording'

const verbs = {
  approve: 'approved',
  override: 'approved by override, age waived,',
  return: 'returned',
  withdraw: 'withdrawn',
} as const

/** What a head coach decided, as it stands in a log: "The move to 3 m with forward dives was approved on 3 March by …". */
export function sayDecision(decision: DecisionFact, wish: 'yes' | 'not yet' | null, by: string, words: Words): string {
  const { target, outcome, day, wantsMoreOf } = decision
  const wanted = wantsMoreOf.map((pair) => midSentence(pairName(pair, words)))
  const more = outcome === 'return' && wanted.length > 0 ? `; it wants more of ${listed(wanted)}` : ''
  const who = words.diver ?? 'the diver'
  const said =
    wish === null ? '' : wish === 'yes' ? `; ${who} wants to move up` : `; ${who} does not want to move up yet`
  return sentence(`${stepName(target, words)} was ${verbs[outcome]} on ${dayName(day, words)} by ${by}${more}${said}`)
}
