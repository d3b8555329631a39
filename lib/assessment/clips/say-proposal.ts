import { counted, listed, sentence } from '../readiness/grammar'
import { type CameraClock, sayClock } from './camera-clock'
import type { Doubtful, Match, Waiting } from './match-clips'
import { intoOf, type Proposal, rangeOf } from './propose'

/** What the camera's clock was taken to be, and why. */
export function sayCameraClock({ behind, from, clips }: CameraClock): string {
  const shown = sayClock(behind)
  const found = `the camera’s clock is taken as ${shown}`
  switch (from) {
    case 'said':
      return sentence(`${found}, as you said`)
    case 'known clip':
      return sentence(`${found}, from the clip that you know`)
    case 'numbers':
      return sentence(`${found}, from ${counted(clips, 'clip')} whose number and time are both there`)
    case 'nothing':
      return sentence(
        `nothing here tells whether the camera’s clock was right; say above how it was, or give one clip that you know`,
      )
  }
}

const doubts: Readonly<Record<Doubtful, string>> = {
  'several clips': 'several clips could be it',
  'several dives': 'several dives fall to this clip; with from and to they can be told apart',
  'time disagrees': 'the number says one clip, the time does not agree',
  'clock unknown': 'it fits if the camera’s clock was right, which nothing here tells; say above how it was',
  'number differs': 'the time fits a clip of another number',
}

/** How a clip was found for an attempt, or why none is proposed. */
export function sayMatch(match: Match): string {
  if (match.by === 'number') return 'By its number.'
  if (match.by === 'time') return 'By its time.'
  if (match.by !== 'unclear') return 'No clip is near it.'
  return sentence(`unclear: ${doubts[match.why]}. Choose one, or none`)
}

/** Clips of the list that nothing was proposed for; null when all were. */
export function sayUnused(lines: readonly number[]): string | null {
  if (lines.length === 0) return null
  const named = listed(lines.slice(0, 12).map(String))
  const more = lines.length > 12 ? ` and ${lines.length - 12} more` : ''
  return sentence(
    `${lines.length === 1 ? 'line' : 'lines'} ${named}${more} of the list ${lines.length === 1 ? 'is' : 'are'} not proposed for any dive`,
  )
}

const minutes = (seconds: number): string =>
  `${Math.floor(seconds / 60)}:${String(Math.floor(seconds % 60)).padStart(2, '0')}`

function sayPart(start: number, end: number | null): string {
  if (start === 0 && end === null) return 'all of it'
  return `${minutes(start)} to ${end === null ? 'its end' : minutes(end)}`
}

/**
 * The clips that an attempt may be given, by line: what was found for it; where nothing was, all that is left over. Each says
 * how far into it the mark lies, and which part of it the moment would be.
 */
export function sayChoices(
  proposal: Proposal,
  match: Match,
  waiting: Waiting,
): { readonly value: string; readonly label: string }[] {
  const taken = proposal.matches.flatMap((other) => ('line' in other ? [other.line] : []))
  const own = 'line' in match ? [match.line] : 'lines' in match ? match.lines : []
  return proposal.clips
    .filter(({ line }) => own.includes(line) || (own.length === 0 && !taken.includes(line)))
    .map((clip) => {
      const into = intoOf(proposal, clip, waiting)
      const { start, end } = rangeOf(proposal, clip, waiting, taken.filter((line) => line === clip.line).length > 1)
      const mark = into === null ? [] : [into < 0 ? 'tapped before it begins' : `tapped ${minutes(into)} into it`]
      const number = clip.clip === null ? [] : [`clip ${clip.clip}`]
      const label = [`line ${clip.line}`, ...number, ...mark, sayPart(start, end)].join(' · ')
      return { value: String(clip.line), label }
    })
}
