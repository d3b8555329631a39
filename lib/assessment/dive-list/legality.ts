import { type Entry, entriesAt } from '../../curriculum/event/entry'
import { cheapestList, type Listed } from '../../curriculum/event/legal-list'
import type { Event } from '../../curriculum/event/model'
import { whyNoList } from '../../curriculum/event/why-no-list'
import { pausesOn } from '../block'
import type { SignedState } from '../holding-state'
import type { Context, Evaluation } from '../readiness/evaluation'
import { ageOn } from '../readiness/leaf-age'
import { answeringSigned } from '../readiness/leaf-sign-off'
import { parseDay } from '../time'
import type { DiveListAnswer, EnteredDive, WhyNotEntered } from './answer'

interface Held {
  readonly entry: Entry
  readonly by: SignedState
}

// A list with nothing to renew comes before any other, and among those one without a paused dive.
const costOf = { renewal: 1000, pause: 1 } as const

function outsideBand({ ageBand, season }: Event, { record }: Evaluation): WhyNotEntered[] {
  const { from, to } = ageBand
  if (from === null && to === null) return []
  if (record.born === null) return [{ kind: 'no birth date' }]
  const age = ageOn(record.born, parseDay(`${season}-12-31`), 'the date')
  return age < (from ?? 0) || age > (to ?? Number.POSITIVE_INFINITY) ? [{ kind: 'outside the band', age }] : []
}

function heldAt(event: Event, evaluation: Evaluation, context: Context): Held[] {
  return entriesAt(evaluation.curriculum, event.place).flatMap((entry) => {
    const by = answeringSigned(entry.leaf, evaluation, context)
    return by ? [{ entry, by }] : []
  })
}

const isCurrent = ({ by }: Held): boolean => by.state === 'current'

/**
 * Whether a diver can enter an event: with dives that are held at its place, at whatever level teaches them. Inside a level
 * or move only what was shown here counts (`context`). What lapsed and can be renewed, or is in doubt, is looked at
 * second. Of the legal lists the one that is named wants the fewest renewals, and then has the fewest paused dives.
 */
export function diveListOf(event: Event, evaluation: Evaluation, context: Context): DiveListAnswer {
  const held = heldAt(event, evaluation, context)
  const current = held.filter(isCurrent)
  const lapsed = held.filter((one) => !isCurrent(one)).map(({ entry }) => entry.pair)
  const outside = outsideBand(event, evaluation)
  const offers = held.map((one) => {
    const paused = pausesOn(evaluation, [one.entry.pair]).length > 0
    return { entry: one.entry, cost: (isCurrent(one) ? 0 : costOf.renewal) + (paused ? costOf.pause : 0) }
  })
  const found = outside.length > 0 ? null : cheapestList(event.parts, offers)
  if (!found) {
    const short = whyNoList(
      event.parts,
      current.map(({ entry }) => entry),
    )
    return { legal: 'no', because: [...outside, ...short], lapsed }
  }
  const list = found.map((listed) => entered(listed, held))
  const renew = list.map(({ pair }) => pair).filter((pair) => lapsed.includes(pair))
  return renew.length === 0 ? { legal: 'now', list } : { legal: 'once renewed', list, renew }
}

function entered({ entry, part }: Listed, held: readonly Held[]): EnteredDive {
  const by = held.find((one) => one.entry === entry)?.by
  return { pair: entry.pair, part, tenths: entry.tenths, evidence: by ? [by.id, ...by.evidence] : [] }
}
