import { formatTenths } from '../../curriculum/dives/difficulty'
import { type PairKey, splitPairKey } from '../../curriculum/edition/curriculum'
import type { Event } from '../../curriculum/event/model'
import type { DiveListAnswer, EnteredDive, WhyNotEntered } from '../dive-list/answer'
import { counted, countWord, listed, midSentence, ordinal } from './grammar'
import { pairName, placeName, type Words } from './wording'

type Names = Pick<Words, 'curriculum'>
type Kind = WhyNotEntered['kind']

/** "Autumn trophy"; a key that the edition lacks in quotation marks. */
export const eventName = (event: string, { curriculum }: Names): string =>
  curriculum.events.get(event)?.title ?? `“${event}”`

function bandName({ ageBand: { from, to } }: Event): string {
  if (from !== null && to !== null) return `from ${from} to ${to}`
  return from === null ? `at most ${to}` : `at least ${from}`
}

const partName = (event: Event, part: number): string =>
  event.parts.length === 1 ? 'the list' : `the ${ordinal(part + 1)} part`

const says: {
  readonly [K in Kind]: (why: Extract<WhyNotEntered, { kind: K }>, event: Event) => string
} = {
  'too few dives': ({ held, wanted }, { place }) =>
    `${held === 0 ? 'none' : countWord(held)} of the ${counted(wanted, 'dive')} asked ${held <= 1 ? 'is' : 'are'} held ${placeName(place)}`,
  'too few families': ({ held, wanted, part }, event) =>
    `${partName(event, part)} takes dives of ${counted(wanted, 'family', 'families')} and ${held === 0 ? 'none' : countWord(held)} ${held <= 1 ? 'is' : 'are'} held`,
  'families shared': () => 'each part could be filled by itself and not all together, for no dive number stands twice',
  'over the cap': ({ least, cap, part }, event) =>
    `the easiest dives of ${partName(event, part)} come to ${formatTenths(least)} where at most ${formatTenths(cap)} is allowed`,
  'caps shared': () => 'each limit of difficulty could be kept by itself and not all together',
  'no birth date': (_, event) => `no birth date is recorded: an age of ${bandName(event)} is asked`,
  'outside the band': ({ age }, event) =>
    `age ${age} on 31 December ${event.season} is outside the band: ${bandName(event)} is asked`,
}

function sayWhy(why: WhyNotEntered, event: Event): string {
  // A reason and its entry always match; TypeScript cannot see that correlation through an index.
  const say = says[why.kind] as (why: WhyNotEntered, event: Event) => string
  return say(why, event)
}

const diveName = (pair: PairKey, { curriculum }: Names): string => {
  const { skill } = splitPairKey(pair)
  return curriculum.skills.get(skill)?.dive ?? `“${skill}”`
}

/** "101C, 201B and 401B, which come to 4.9 of at most 5.0". */
function sayPart(event: Event, part: number, list: readonly EnteredDive[], words: Names): string {
  const own = list.filter((dive) => dive.part === part)
  const dives = listed(own.map(({ pair }) => diveName(pair, words)))
  const cap = event.parts[part]?.difficultyCap ?? null
  if (cap === null) return dives
  const sum = own.reduce((tenths, dive) => tenths + dive.tenths, 0)
  return `${dives} (${formatTenths(sum)} of at most ${formatTenths(cap)})`
}

const sayList = (event: Event, list: readonly EnteredDive[], words: Names): string =>
  event.parts.map((_, part) => sayPart(event, part, list, words)).join('; then ')

const pairNames = (pairs: readonly PairKey[], words: Names): string =>
  listed(pairs.map((pair) => midSentence(pairName(pair, words))))

/** What became of the question whether a list is legal, as a sentence about the event names it. */
export function sayDiveList(key: string, answer: DiveListAnswer, words: Names): string {
  const event = words.curriculum.events.get(key)
  const name = eventName(key, words)
  if (!event) return `no list can be made for ${name}, which this edition does not have`
  if (answer.legal === 'now') return `a list for ${name} is legal: ${sayList(event, answer.list, words)}`
  if (answer.legal === 'once renewed')
    return `a list for ${name} is legal once ${pairNames(answer.renew, words)} ${answer.renew.length === 1 ? 'is' : 'are'} current again: ${sayList(event, answer.list, words)}`
  const because = answer.because.map((why) => sayWhy(why, event))
  const lapsed =
    answer.lapsed.length === 0
      ? []
      : [`${pairNames(answer.lapsed, words)} ${answer.lapsed.length === 1 ? 'is' : 'are'} to be renewed`]
  return `no list for ${name} is legal yet: ${[...because, ...lapsed].join('; ')}`
}
