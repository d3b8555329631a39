import type { PairKey } from '../../curriculum/edition/curriculum'
import type { Caution } from '../against'
import { countWord, listed, midSentence, sentence } from './grammar'
import { dayName, pairName, type Words } from './wording'

type Kind = Caution['kind']
/** The caution of one kind, also where several kinds have one shape. */
type Of<K extends Kind> = Extract<Caution, { kind: K }> | (Caution & { readonly kind: K })
const named = 3

/** At most three by name, and how many more. */
function pairs(keys: readonly PairKey[], words: Words): string {
  const names = keys.slice(0, named).map((key) => midSentence(pairName(key, words)))
  const more = keys.length - named
  return listed(more > 0 ? [...names, `${countWord(more)} more`] : names)
}

/** One entry a kind: a caution added to the union does not compile until it is said here. */
const says: { readonly [K in Kind]: (caution: Of<K>, words: Words) => string } = {
  'by override': () => 'part of what it rests on was given by override',
  raised: (caution, words) => `a raised critical rating waits to be accepted at ${pairs(caution.pairs, words)}`,
  flagged: (caution, words) => `attempts at a closed skill wait to be released at ${pairs(caution.pairs, words)}`,
  'recognised only': (caution, words) =>
    `no attempt that anybody here has rated stands behind ${pairs(caution.pairs, words)}`,
  'one coach': (caution, words) => `one coach alone has seen ${pairs(caution.pairs, words)}`,
  'no video': (caution, words) => `no video shows ${pairs(caution.pairs, words)}`,
  'lapses soon': ({ pair, day }, words) => `${pairName(pair, words)} lapses after ${dayName(day, words)}`,
}

/** What speaks against a target without stopping it, as one sentence. */
export function sayCaution(caution: Caution, words: Words): string {
  // A caution and its entry always match; TypeScript cannot see that correlation through an index.
  const say = says[caution.kind] as (caution: Caution, words: Words) => string
  return sentence(say(caution, words))
}
