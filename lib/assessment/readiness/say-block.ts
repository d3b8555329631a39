import type { PairKey } from '../../curriculum/edition/curriculum'
import type { Block } from './finding'
import { listed, midSentence, sentence } from './grammar'
import { dayName, incidentName, pairName, placeName, type Words } from './wording'

type Kind = Block['kind']

const closes = { water: 'the water', boards: 'the boards', new: 'anything new' } as const

const pairs = (keys: readonly PairKey[], words: Words): string =>
  listed(keys.map((key) => midSentence(pairName(key, words))))

/** One entry a kind: a block added to the union does not compile until it is said here. */
const says: { readonly [K in Kind]: (block: Extract<Block, { kind: K }>, words: Words) => string } = {
  'stand-down': (block, words) => {
    const who = words.diver ?? 'the diver'
    const ended = block.knocks ? 'until a head coach clears the knock to the head' : 'until a head coach ends it'
    const until = block.until === null ? ended : `until ${dayName(block.until, words)}`
    return `${who} is stood down from ${closes[block.closes]} ${until}`
  },
  pause: ({ pair, what }, words) =>
    `${pairName(pair, words)} is paused by ${incidentName[what]} until a head coach clears it`,
  'lay-off': ({ place, since, reentry }, words) =>
    `nothing was dived ${placeName(place)} since ${dayName(since, words)}${
      reentry.length > 0 ? `: first show ${pairs(reentry, words)} again` : ''
    }`,
  returned: ({ day, wantsMoreOf }, words) =>
    `returned on ${dayName(day, words)}: it comes back with a new clean attempt ${
      wantsMoreOf.length > 0 ? `at ${pairs(wantsMoreOf, words)}` : 'at what it rests on'
    }`,
}

/** What stands against a target or an open skill, as one sentence; never the reason of a stand-down. */
export function sayBlock(block: Block, words: Words): string {
  // A block and its entry always match; TypeScript cannot see that correlation through an index.
  const say = says[block.kind] as (block: Block, words: Words) => string
  return sentence(say(block, words))
}
