import type { PairKey } from '../../curriculum/edition/curriculum'
import { type Entry, type ListName, lapseOf } from '../lists'
import type { Raise } from '../raise'
import { counted, listed, midSentence, sentence } from './grammar'
import { sayDoubtChain } from './say-doubt'
import { criterionName, dayName, incidentName, levelName, pairName, stepName, type Words } from './wording'

/** A list as its heading, and what a head coach does there. */
export const listWords: Readonly<Record<ListName, { readonly title: string; readonly aside: string }>> = {
  incidents: {
    title: 'Incidents to clear',
    aside: 'Each closes its skill and all that rests on it until you clear it in writing.',
  },
  'in doubt': {
    title: 'In doubt',
    aside: 'A doubt of its own clears by the recheck; one from below when what fell is current again.',
  },
  raised: {
    title: 'Raised critical ratings',
    aside: 'A critical rating that was raised or taken back counts when you accept it.',
  },
  ready: { title: 'Ready', aside: 'Ready means that it can be approved now.' },
  flagged: {
    title: 'Flagged attempts',
    aside: 'Dived while the skill was closed: each earns nothing until you release it in writing.',
  },
  'not rated': {
    title: 'Called, not rated',
    aside: 'Closing a call early says why a number is missing, and deletes nothing.',
  },
  lapsing: { title: 'About to lapse', aside: 'Within two weeks, and lapsed while the recheck still renews it.' },
  'to review': {
    title: 'To review',
    aside: 'Approved before; what it asks no longer holds. Nothing is taken away by itself.',
  },
}

/** "“Hands locked” from 1 to 3", "“Hands locked”, rated 1, taken back". */
const sayRaise = ({ criterion, from, to }: Raise, words: Words): string =>
  to === null
    ? `${criterionName(criterion, words)}, rated ${from}, taken back`
    : `${criterionName(criterion, words)} from ${from} to ${to}`

const at = (pair: PairKey, words: Words): string => midSentence(pairName(pair, words))

type Says = { readonly [L in ListName]: (entry: Extract<Entry, { list: L }>, words: Words) => string }

/** One sentence a list; a list added to the union does not compile until it is said here. */
const says: Says = {
  incidents: ({ incident }, words) =>
    `${incidentName[incident.kind]} at ${at(incident.pair, words)}: paused, with all that rests on it, until you clear it${
      incident.kind === 'knock to the head' ? '; stood down from the water' : ''
    }`,
  'in doubt': ({ chain }, words) => sayDoubtChain(chain, words),
  raised: ({ attempt, raises }, words) =>
    `${listed(raises.map((raise) => sayRaise(raise, words)))} in ${at(attempt.pair, words)} of ${dayName(attempt.day, words)}; until you accept it, the lower rating counts`,
  ready: ({ target, since }, words) =>
    `${words.diver ?? 'the diver'} has met all that ${stepName(target, words)} asks since ${dayName(since, words)}`,
  flagged: ({ attempt, why }, words) =>
    why === 'closed'
      ? `${pairName(attempt.pair, words)} was dived on ${dayName(attempt.day, words)} while it was closed: it earns nothing until you release it`
      : `${pairName(attempt.pair, words)} is dated ${dayName(attempt.day, words)}, which has not come: the clock of the phone was wrong, and it earns nothing until then`,
  'not rated': ({ call, missing }, words) =>
    `of ${counted(call.count, 'called attempt')} at ${at(call.pair, words)}, ${counted(missing, 'is', 'are')} not rated`,
  lapsing: ({ pair, signed, renewal }, words) => {
    const name = pairName(pair, words)
    const level = levelName(words.curriculum.levels[signed.level]?.key ?? '', words)
    if (lapseOf(signed, words.today) === 'soon')
      return `${name} at ${level} lapses after ${dayName(signed.validUntil, words)}: one clean attempt renews it`
    const then = `${name} at ${level} lapsed on ${dayName(signed.validUntil, words)}`
    return renewal
      ? `${then}; it has been shown again and waits to be signed`
      : `${then}: the recheck renews it until ${dayName(signed.renewBy, words)}`
  },
  'to review': ({ target }, words) =>
    `${words.diver ?? 'the diver'} has ${stepName(target, words)}, and what it asks no longer holds`,
}

/** Why a line stands on its list, in a sentence. */
export function sayEntry(entry: Entry, words: Words): string {
  // An entry and its line always match; TypeScript cannot see that correlation through an index.
  const say = says[entry.list] as (entry: Entry, words: Words) => string
  return sentence(say(entry, words))
}
