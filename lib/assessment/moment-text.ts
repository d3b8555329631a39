import type { MomentItem } from './deck/contract'
import { parseTemporalFragment, type RangeProblem, rangeProblem, splitMomentLink } from './moment'

/** A moment as it is typed: nothing is thrown away because it is not yet right. */
export interface MomentText {
  /** UUIDv7 that the moment will have. */
  readonly id: string
  readonly link: string
  readonly start: string
  readonly end: string
}

/** What of a moment is typed. */
export type MomentField = 'link' | 'start' | 'end'
/** What is wrong at each field, and what to do, as a sentence. */
export type MomentErrors = Partial<Record<MomentField, string>>

/** A typed moment as one that can be kept, seconds, or what is wrong with it. */
export type MomentReading =
  | { readonly ok: true; readonly moment: MomentItem }
  | { readonly ok: false; readonly errors: MomentErrors }

/** Seconds of `12`, `12.4` or `1:02.5` (minutes and seconds, as a player shows them), or null. */
export function readSeconds(text: string): number | null {
  const trimmed = text.trim().replace(',', '.')
  const clock = /^\d:\d{2}(?::|$|\.)/.test(trimmed) ? `0${trimmed}` : trimmed
  return parseTemporalFragment(`t=${clock}`)?.start ?? null
}

function webAddress(text: string): boolean {
  if (!URL.canParse(text)) return false
  const { protocol, hostname } = new URL(text)
  return (protocol === 'https:' || protocol === 'http:') && hostname !== ''
}

/** A link that carries `#t=…` fills the times that are still empty; the typed ones stand. */
export function withLink(moment: MomentText, link: string): MomentText {
  const { range } = splitMomentLink(link.trim())
  if (!range || moment.start.trim() !== '' || moment.end.trim() !== '') return { ...moment, link }
  return {
    ...moment,
    link: splitMomentLink(link.trim()).link,
    start: String(range.start),
    end: range.end === null ? '' : String(range.end),
  }
}

function sayRange({ what }: RangeProblem, start: string): string {
  if (what === 'too late')
    return 'That is more than 24 hours into the video. Write the time that the player shows, e.g. 12.4 or 1:02.5.'
  const later = `its end must be later than ${start.trim() || '0'}.`
  return what === 'backwards'
    ? `The moment ends before it begins: ${later}`
    : `The moment is shorter than a thousandth of a second: ${later}`
}

/** Reads a moment as typed: each error at its field, saying what to do. An empty end plays to the end of the video. */
export function readMoment(typed: MomentText): MomentReading {
  const { id, link, start, end } = withLink(typed, typed.link)
  const errors: MomentErrors = {}
  const address = link.trim()
  if (address === '') errors.link = 'Paste the link of the video.'
  else if (!webAddress(address)) errors.link = 'This is not a web address. It begins with https:// or http://.'
  else if (address.length > 2000) errors.link = 'The link is longer than 2,000 characters. Use a shorter one.'
  const seconds = 'Write it in seconds, e.g. 12.4, or as minutes and seconds, e.g. 1:02.5.'
  const from = start.trim() === '' ? 0 : readSeconds(start)
  if (from === null) errors.start = seconds
  const to = end.trim() === '' ? null : readSeconds(end)
  if (to === null && end.trim() !== '') errors.end = seconds
  const problem = from === null ? null : rangeProblem({ start: from, end: to })
  if (problem) errors[problem.at] = sayRange(problem, start)
  if (Object.keys(errors).length > 0 || from === null) return { ok: false, errors }
  return { ok: true, moment: { id, link: splitMomentLink(address).link, start: from, end: to } }
}
