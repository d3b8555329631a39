import type { TimeRange } from '../moment'
import type { Instant } from '../time'
import { type CameraClock, findCameraClock } from './camera-clock'
import type { ClipLine } from './clip-lines'
import { clipRange, intoClip } from './clip-range'
import { type Clip, type Match, matchClips, type Waiting } from './match-clips'

/** What the coach said of the camera's clock: how far it is behind (milliseconds), or null, and the one clip that she knows. */
export interface SaidClock {
  readonly behind: number | null
  readonly known: { readonly attempt: string; readonly line: number } | null
}

/** A pasted clip on the camera's time line. */
export type TimedClip = ClipLine & { readonly span: Clip }

/** What is proposed for a session, and on which clock. */
export interface Proposal {
  readonly clock: CameraClock
  readonly clips: readonly TimedClip[]
  readonly matches: readonly Match[]
}

/** One clip chosen for one attempt. */
export interface ChosenClip {
  readonly attempt: string
  readonly line: number
}

/** A chosen clip as the moment that it becomes; seconds. */
export type PickedLink = { readonly attempt: string; readonly link: string } & TimeRange

/** Proposes clips for what waits. `instantOf` says when the clocks of the club show a second of the session's day. */
export function propose(
  waiting: readonly Waiting[],
  lines: readonly ClipLine[],
  said: SaidClock,
  instantOf: (secondOfDay: number) => Instant,
): Proposal {
  const clips = lines.map((line): TimedClip => {
    const [start, end] = [line.start, line.end].map((time) => (time === null ? null : instantOf(time)))
    const span = { line: line.line, clip: line.clip, start: start ?? null, end: end ?? null }
    return { ...line, span: { ...span, ranged: line.range !== null } }
  })
  const spans = clips.map(({ span }) => span)
  const clock: CameraClock =
    said.behind === null ? findCameraClock(waiting, spans, said.known) : { behind: said.behind, from: 'said', clips: 0 }
  const matches = matchClips(waiting, spans, clock.behind)
  return { clock, clips, matches: clock.from === 'nothing' ? matches.map(doubted) : matches }
}

/** By a clock of which nobody said that it is right, a time proves nothing: a camera that is off fits its neighbours' dives. */
const doubted = (match: Match): Match =>
  match.by === 'time' ? { attempt: match.attempt, by: 'unclear', why: 'clock unknown', lines: [match.line] } : match

/** Seconds from the beginning of a clip to the mark of an attempt; null where the clip has no time of day. */
export const intoOf = ({ clock }: Proposal, { span }: TimedClip, { at }: Waiting): number | null =>
  intoClip(span, at, clock.behind)

/** The part of a clip that one attempt's moment takes; `shared`: others are in the clip too. */
export const rangeOf = (proposal: Proposal, clip: TimedClip, waiting: Waiting, shared: boolean): TimeRange =>
  clipRange({ ...clip.span, range: clip.range }, intoOf(proposal, clip, waiting), shared)

/** The moments that the chosen clips become, or why they cannot, as a sentence. Each attempt is chosen for once. */
export function linksOf(
  proposal: Proposal,
  waiting: readonly Waiting[],
  picks: readonly ChosenClip[],
): { readonly ok: true; readonly links: readonly PickedLink[] } | { readonly ok: false; readonly message: string } {
  const links: PickedLink[] = []
  for (const { attempt, line } of picks) {
    const clip = proposal.clips.find((one) => one.line === line)
    const one = waiting.find((other) => other.attempt === attempt)
    if (!clip || !one || links.some((link) => link.attempt === attempt))
      return {
        ok: false,
        message:
          'A clip was chosen that does not stand in the list, or for an attempt that waits no more. Propose again.',
      }
    const shared = picks.filter((pick) => pick.line === line).length > 1
    if (shared && (clip.range || clip.start === null))
      return {
        ok: false,
        message: `Line ${line} is chosen for several dives: write the time of day at which that clip begins, or choose one of them.`,
      }
    links.push({ attempt, link: clip.link, ...rangeOf(proposal, clip, one, shared) })
  }
  return links.length > 0 ? { ok: true, links } : { ok: false, message: 'No clip is chosen yet.' }
}
