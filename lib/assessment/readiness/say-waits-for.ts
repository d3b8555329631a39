import type { Block } from './finding'
import { midSentence } from './grammar'
import { eventName } from './say-dive-list'
import { sayFeature } from './say-requirement'
import type { WaitsFor } from './waits-for'
import { criterionName, pairName, stepName, type Words } from './wording'

type Kind = WaitsFor['kind']

const blocks: Readonly<Record<Block['kind'], string>> = {
  'stand-down': 'the end of a stand-down',
  pause: 'a head coach to clear an incident',
  'lay-off': 're-entry after a lay-off',
  returned: 'a new clean attempt since it was returned',
}

/** One entry a kind: something to wait for does not compile until it is said here. */
const says: {
  readonly [K in Kind]: (what: Extract<WaitsFor, { kind: K }>, words: Pick<Words, 'curriculum'>) => string
} = {
  shortfall: ({ criterion, pair }, words) =>
    `${criterionName(criterion, words)} in ${midSentence(pairName(pair, words))}`,
  pair: ({ pair }, words) => pairName(pair, words),
  criterion: ({ criterion }, words) => criterionName(criterion, words),
  decision: ({ target }, words) => `a decision on ${stepName(target, words)}`,
  list: ({ event }, words) => `a legal list for ${eventName(event, words)}`,
  venue: ({ feature }) => sayFeature(feature),
  age: () => 'the age that is asked',
  block: ({ block }) => blocks[block],
}

/** What is waited for, as it follows "waits for": a skill at a place, a criterion in it, a decision, a date. */
export function sayWaitsFor(what: WaitsFor, words: Pick<Words, 'curriculum'>): string {
  // A kind and its entry always match; TypeScript cannot see that correlation through an index.
  const say = says[what.kind] as (what: WaitsFor, words: Pick<Words, 'curriculum'>) => string
  return say(what, words)
}
