/** Days since 1970-01-01 on the calendar of the club; whole numbers, so that windows are subtraction. */
export type EpochDay = number
/** Milliseconds since 1970-01-01T00:00:00Z. */
export type Instant = number

/**
 * The question's date. Facts received after `instant` do not exist yet; windows and lapses are counted from `day`.
 * For a past date, `instant` is the last millisecond of that day in the club's zone.
 */
export interface AsOf {
  readonly day: EpochDay
  readonly instant: Instant
}

const millisecondsADay = 86_400_000
const formats = new Map<string, Intl.DateTimeFormat>()

function localDate(instant: Instant, zone: string): string {
  let format = formats.get(zone)
  if (!format) {
    format = new Intl.DateTimeFormat('en-CA', { timeZone: zone, year: 'numeric', month: '2-digit', day: '2-digit' })
    formats.set(zone, format)
  }
  return format.format(instant)
}

/** The calendar day on which `instant` falls in an IANA time zone. Throws RangeError for an unknown zone. */
export const dayIn = (instant: Instant, zone: string): EpochDay => parseDay(localDate(instant, zone))

/** Whether a text names an IANA time zone that days can be counted in. */
export function isZone(text: string): boolean {
  try {
    return text.includes('/') || text === 'UTC' ? localDate(0, text) !== '' : false
  } catch (error) {
    if (error instanceof RangeError) return false
    throw error
  }
}

/** `2026-03-07` → days since 1970-01-01. Throws RangeError when the date does not exist. */
export function parseDay(iso: string): EpochDay {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(iso)
  const time = match ? Date.UTC(Number(match[1]), Number(match[2]) - 1, Number(match[3])) : Number.NaN
  if (Number.isNaN(time) || new Date(time).toISOString().slice(0, 10) !== iso)
    throw new RangeError(`"${iso}" is not a date that exists; write it as YYYY-MM-DD`)
  return time / millisecondsADay
}

/** Days since 1970-01-01 → `2026-03-07`. */
export const formatDay = (day: EpochDay): string => dateOf(day).toISOString().slice(0, 10)

/** The day as a column of the database keeps it: its midnight in UTC. */
export const dateOf = (day: EpochDay): Date => new Date(day * millisecondsADay)

/** The day that such a column holds. */
export const dayOf = (date: Date): EpochDay => Math.floor(date.getTime() / millisecondsADay)

/** As of now: what has been received by `instant`, on the calendar day of `zone`. */
export const asOfInstant = (instant: Instant, zone: string): AsOf => ({ day: dayIn(instant, zone), instant })

/** As of the end of a day in `zone`: the last instant whose local date is that day. */
export function asOfDay(day: EpochDay, zone: string): AsOf {
  // Zones differ from UTC by at most a day; halve the interval until the boundary is found.
  let inside = (day - 1) * millisecondsADay
  let outside = (day + 2) * millisecondsADay
  while (outside - inside > 1) {
    const middle = Math.floor((inside + outside) / 2)
    if (dayIn(middle, zone) <= day) inside = middle
    else outside = middle
  }
  return { day, instant: inside }
}
