const moment = new Intl.DateTimeFormat('en-GB', {
  weekday: 'short',
  day: 'numeric',
  month: 'short',
  hour: '2-digit',
  minute: '2-digit',
})
const hour = new Intl.DateTimeFormat('en-GB', { hour: '2-digit', minute: '2-digit' })
const date = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short' })

/** An instant on this phone's clock, e.g. `Tue 3 Mar, 16:30`. */
export const when = (instant: number): string => moment.format(instant)

const named = new Intl.DateTimeFormat('en-GB', { weekday: 'short', day: 'numeric', month: 'short', timeZone: 'UTC' })

/** A calendar day, e.g. `Sat 7 Mar`. */
export const whichDay = (day: string): string => named.format(Date.parse(day))

/** The same in a corner: the hour if it is of today, else the date. */
export function clock(instant: number): string {
  const today = date.format(Date.now())
  return date.format(instant) === today ? hour.format(instant) : date.format(instant)
}
