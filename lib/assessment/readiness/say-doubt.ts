import type { DoubtLink } from '../doubt-chain'
import type { Doubt } from '../shortfall'
import { midSentence, sentence } from './grammar'
import { sayShortfall } from './say-shortage'
import { dayName, pairName, stepName, type Words } from './wording'

/** Why something signed is in doubt, as a clause. */
export function doubtBecause(doubt: Doubt, words: Words): string {
  if (doubt.kind === 'shortfall') return sayShortfall(doubt.shortfall, words)
  if (doubt.kind === 'evidence') return 'an attempt that the sign-off rests on counts no longer'
  if (doubt.kind === 'withdrawn below') return `it rests on ${stepName(doubt.target, words)}, which was withdrawn`
  return `it rests on ${midSentence(pairName(doubt.pair, words))}, which is not current`
}

function linkClause({ pair, state, until }: DoubtLink, words: Words): string {
  const name = midSentence(pairName(pair, words))
  if (state === 'lapsed')
    return `it rests on ${name}, which lapsed${until === null ? '' : ` on ${dayName(until, words)}`}`
  if (state === 'revoked') return `it rests on ${name}, which was revoked`
  if (state === 'not signed') return `it rests on ${name}, which is not held at that level`
  return `it rests on ${name}, which is in doubt itself`
}

/** The whole chain of a doubt in one sentence: "A is in doubt: it rests on B, which is in doubt itself: …". */
export function sayDoubtChain(chain: readonly DoubtLink[], words: Words): string {
  const [first, ...below] = chain
  if (!first) return ''
  const last = chain.at(-1)?.doubt
  const own = last && last.kind !== 'below' ? [doubtBecause(last, words)] : []
  const clauses = [
    `${pairName(first.pair, words)} is in doubt`,
    ...below.map((link) => linkClause(link, words)),
    ...own,
  ]
  return sentence(clauses.join(': '))
}

const fallen: Readonly<Record<Exclude<DoubtLink['state'], 'in doubt'>, string>> = {
  lapsed: 'has lapsed',
  revoked: 'was taken back',
  'not signed': 'is not held at the level that is asked',
}

/** What fell, by itself: "Forward dive, tuck at 1 m is in doubt: …", "Back dive, straight at 1 m lapsed on 3 March." */
export function sayDoubtRoot(link: DoubtLink, words: Words): string {
  if (link.state === 'in doubt') return sayDoubtChain([link], words)
  const name = pairName(link.pair, words)
  return sentence(
    link.until === null ? `${name} ${fallen[link.state]}` : `${name} lapsed on ${dayName(link.until, words)}`,
  )
}
