import { longestClipNumber } from '../deck/limits'
import { ownFilm, rangeProblem, splitMomentLink, type TimeRange } from '../moment'

/** Seconds after midnight on the camera's clock. */
export type SecondsOfDay = number

/** A clip as a coach pastes it. It has a number, a time of day, or both. */
export interface ClipLine {
  /** Counted from 1, empty lines too. */
  readonly line: number
  /** Without a time range. */
  readonly link: string
  /** The range that the link carried; null when it carried none. */
  readonly range: TimeRange | null
  readonly clip: number | null
  readonly start: SecondsOfDay | null
  /** Later than `start`; null when it was not given. */
  readonly end: SecondsOfDay | null
}

/** What is wrong with one line, and what to do about it. */
export interface ClipLineProblem {
  readonly line: number
  readonly message: string
}

/** Every line as a clip, or all that is wrong. */
export type ClipLines =
  | { readonly ok: true; readonly clips: readonly ClipLine[] }
  | { readonly ok: false; readonly problems: readonly ClipLineProblem[] }

/** Most lines that are read at once: more than a camera films in a day. */
export const mostClips = 300
/** As a moment has it. */
const longestLink = 2000

type Part = Partial<Pick<ClipLine, 'clip' | 'start' | 'end'>>

const timeOfDay = /^(\d{1,2}):([0-5]\d)(?::([0-5]\d))?$/

function readTime(text: string): SecondsOfDay | null {
  const match = timeOfDay.exec(text)
  const [hours, minutes, seconds] = [Number(match?.[1]), Number(match?.[2]), Number(match?.[3] ?? 0)]
  return match && hours < 24 ? hours * 3600 + minutes * 60 + seconds : null
}

/** `17:42`, `17:42:05`, or both ends: `17:42:05-17:43:00`. */
function readSpan(text: string): Part | string {
  const [from = '', to, ...more] = text.split(/[-–]/)
  const start = readTime(from)
  if (start === null || more.length > 0)
    return `"${text}" is no time of day; write it as 17:42:05, or from and to as 17:42:05-17:43:00`
  if (to === undefined) return { start }
  const end = readTime(to)
  if (end === null) return `"${to}" is no time of day; write it as 17:43:00`
  return end <= start
    ? `the clip must end later than it begins; put the earlier time first, with seconds where the clip is short`
    : { start, end }
}

function readNumber(text: string): Part | string {
  const clip = Number(text)
  return clip >= 1 && clip <= longestClipNumber
    ? { clip }
    : `${text} is no clip number; clips are numbered from 1 to ${longestClipNumber}`
}

const isLink = (word: string): boolean => /^https?:\/\//i.test(word) || ownFilm.test(splitMomentLink(word).link)
/** Commas and semicolons part the pieces; one inside a link belongs to it. */
const trimmed = (word: string): string => word.replace(/^[,;]+|[,;]+$/g, '')

function readWord(word: string): Part | string {
  const bare = word.replace(/^(clip|#)/i, '')
  if (bare === '') return {}
  if (/^\d+$/.test(bare)) return readNumber(bare)
  if (word.includes(':')) return readSpan(word)
  return `"${word}" is neither a clip number nor a time of day; write clip 12, or 17:42:05`
}

function readLine(text: string, line: number): ClipLine | string {
  const words = text.split(/\s+/).map(trimmed).filter(Boolean)
  const links = words.filter(isLink)
  const [pasted] = links
  if (pasted === undefined) return 'there is no link in it; begin with its web address, which starts with https://'
  if (links.length > 1) return 'there are two links in it; write one clip a line'
  const { link, range } = splitMomentLink(pasted)
  if (!ownFilm.test(link) && (!URL.canParse(link) || new URL(link).hostname === ''))
    return `"${link.slice(0, 60)}" is not a whole web address; paste the link again`
  if (range && rangeProblem(range))
    return 'the times after #t= in the link are no moment of a video: they are seconds, at most 24 hours, the end after the start'
  if (link.length > longestLink) return 'the link is longer than 2,000 characters; use a shorter one'
  const found: { clip?: number | null; start?: number | null; end?: number | null } = {}
  for (const word of words.filter((one) => !isLink(one))) {
    const part = readWord(word)
    if (typeof part === 'string') return part
    const twice = Object.keys(part).find((key) => key in found)
    if (twice)
      return `there are two ${twice === 'clip' ? 'clip numbers' : 'times'} in it; write from and to as 17:42:05-17:43:00`
    Object.assign(found, part)
  }
  const { clip = null, start = null, end = null } = found
  if (clip === null && start === null)
    return 'there is neither a clip number nor a time of day after the link; put a space or a tab, then clip 12 or 17:42:05'
  return { line, link, range, clip, start, end }
}

const sameAs = ({ link, range }: ClipLine): string => `${link} ${range?.start ?? ''} ${range?.end ?? ''}`

/**
 * Reads one clip a line: `LINK 17:42:05`, `LINK 17:42:05-17:43:00`, `LINK clip 12`, or a number and a time; spaces, tabs, commas or
 * semicolons part them. A link may carry its range as `#t=12,15`. All lines or none; each bad line is named with what to do.
 */
export function readClipLines(text: string): ClipLines {
  const problems: ClipLineProblem[] = []
  const clips: ClipLine[] = []
  const complain = (line: number, what: string) => problems.push({ line, message: `Line ${line}: ${what}.` })
  for (const [index, raw] of text.split(/\r?\n/).entries()) {
    if (raw.trim() === '') continue
    const line = index + 1
    const read = readLine(raw, line)
    if (typeof read === 'string') {
      complain(line, read)
      continue
    }
    const twin = clips.find((clip) => sameAs(clip) === sameAs(read))
    const numbered = clips.find(({ clip }) => clip !== null && clip === read.clip)
    if (twin) complain(line, `it has the same link as line ${twin.line}; leave one out`)
    else if (numbered) complain(line, `clip ${read.clip} stands on line ${numbered.line} too; put one of them right`)
    clips.push(read)
  }
  if (clips.length > mostClips)
    complain(clips[mostClips]?.line ?? 0, `that is more than ${mostClips} clips; paste them in parts`)
  if (problems.length === 0 && clips.length === 0) complain(1, 'there is no clip in it yet')
  return problems.length > 0 ? { ok: false, problems } : { ok: true, clips }
}
