/** A half-open time range [start, end) of a video in seconds; `end` null plays to its end. */
export interface TimeRange {
  readonly start: number
  readonly end: number | null
}

/** Latest time that a moment may name, seconds into its film: a day. */
export const latestSecond = 86_400

/** Whole milliseconds of a time in seconds, as moments are kept. */
export const wholeMilliseconds = (seconds: number): number => Math.round(seconds * 1000)

/** Why a range, begun at 0 s or later, cannot be a moment's, and which of its ends is at fault. */
export interface RangeProblem {
  readonly at: 'start' | 'end'
  readonly what: 'too late' | 'backwards' | 'too short'
}

/** What keeps a range from being a moment: a time beyond a day, or less than a millisecond from start to end. Null when nothing does. */
export function rangeProblem({ start, end }: TimeRange): RangeProblem | null {
  if (start > latestSecond) return { at: 'start', what: 'too late' }
  if (end === null) return null
  if (end > latestSecond) return { at: 'end', what: 'too late' }
  if (end <= start) return { at: 'end', what: 'backwards' }
  return wholeMilliseconds(end) <= wholeMilliseconds(start) ? { at: 'end', what: 'too short' } : null
}

// NPT of Media Fragments URI 1.0 section 4.2.1: hours have any digits, minutes and seconds two each, below 60.
const clockTime = /^(?:(?:(\d+):)?([0-5]\d):([0-5]\d(?:\.\d*)?)|(\d+(?:\.\d*)?))$/

/** Seconds of one NPT time (`12.4`, `02:01.5`, `0:02:01.5`), or null. */
function parseClockTime(text: string): number | null {
  const match = clockTime.exec(text)
  if (!match) return null
  const [, hours = '0', minutes = '0', seconds, plain] = match
  const total = Number(hours) * 3600 + Number(minutes) * 60 + Number(seconds ?? plain)
  return Number.isFinite(total) ? total : null
}

function parseRange(value: string): TimeRange | null {
  const [from, to, ...more] = value.replace(/^npt:/, '').split(',')
  if (from === undefined || more.length > 0 || (from === '' && to === undefined)) return null
  const start = from === '' ? 0 : parseClockTime(from)
  if (start === null) return null
  if (to === undefined) return { start, end: null }
  const end = parseClockTime(to)
  return end === null || start >= end ? null : { start, end }
}

function percentDecode(text: string): string | null {
  try {
    return decodeURIComponent(text)
  } catch {
    return null
  }
}

/** One `name=value` of a fragment; a part that is none, or is no UTF-8, has the name null. */
function readPart(part: string): { readonly name: string | null; readonly value: string } {
  const equals = part.indexOf('=')
  const name = equals < 0 ? null : percentDecode(part.slice(0, equals))
  const value = percentDecode(part.slice(equals + 1))
  return name === null || value === null ? { name: null, value: '' } : { name, value }
}

/**
 * The temporal dimension of a URL fragment (without its `#`), by W3C Media Fragments URI 1.0: split on & and =, then
 * percent-decode; the last valid `t` wins. Null when there is none, which means the whole video. Never throws.
 */
export function parseTemporalFragment(fragment: string): TimeRange | null {
  const ranges = fragment.split('&').map((part) => {
    const { name, value } = readPart(part)
    return name === 't' ? parseRange(value) : null
  })
  return ranges.findLast((range) => range !== null) ?? null
}

// Seconds above this have no exact milliseconds.
const longest = Number.MAX_SAFE_INTEGER / 1000

/**
 * Writes a range as `t=12.400,15.000`, or `t=12.400` to the end of the video, to the millisecond. Throws RangeError when the
 * range begins before 0 or is not at least a millisecond long.
 */
export function formatTemporalFragment({ start, end }: TimeRange): string {
  const inRange = (time: number) => time >= 0 && time <= longest
  if (!inRange(start)) throw new RangeError(`a moment begins at 0 s or later, not at ${start} s`)
  if (end === null) return `t=${start.toFixed(3)}`
  const [from, to] = [start.toFixed(3), end.toFixed(3)]
  if (!inRange(end) || Number(from) >= Number(to))
    throw new RangeError(
      `the moment ends before it begins: its end (${end} s) must be later than its start (${start} s)`,
    )
  return `t=${from},${to}`
}

/**
 * Takes a link with a time range apart: the link without its `t`, other parts of the fragment kept, and the range. A link
 * without a valid range comes back unchanged, with null.
 */
export function splitMomentLink(url: string): { readonly link: string; readonly range: TimeRange | null } {
  const hash = url.indexOf('#')
  const range = hash < 0 ? null : parseTemporalFragment(url.slice(hash + 1))
  if (!range) return { link: url, range: null }
  const kept = url
    .slice(hash + 1)
    .split('&')
    .filter((part) => part !== '' && readPart(part).name !== 't')
  return { link: url.slice(0, hash) + (kept.length > 0 ? `#${kept.join('&')}` : ''), range }
}

/** The link that opens a video at a range, replacing the range that it had. Throws as `formatTemporalFragment`. */
export function momentUrl(link: string, range: TimeRange | null): string {
  if (!range) return link
  const bare = splitMomentLink(link).link
  return `${bare}${bare.includes('#') ? '&' : '#'}${formatTemporalFragment(range)}`
}

/** The path of a film that this server keeps itself, such as those of the demo. */
export const ownFilm = /^\/media\/[a-z0-9-]+(\/[a-z0-9-]+)*\.webm$/

const mediaFile = /\.(webm|mp4|m4v|mov|ogv)$/i

/** Whether a link leads straight to a film that a browser may play, rather than to a page about one. Never throws. */
export function isMediaFile(link: string): boolean {
  if (ownFilm.test(link)) return true
  if (!URL.canParse(link)) return false
  const { protocol, pathname } = new URL(link)
  return protocol === 'https:' && mediaFile.test(pathname)
}
