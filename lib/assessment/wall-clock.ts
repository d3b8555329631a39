import type { EpochDay, Instant } from './time'

const parts = (zone: string): Intl.DateTimeFormat =>
  new Intl.DateTimeFormat('en-GB', {
    timeZone: zone,
    hourCycle: 'h23',
    ...{ year: 'numeric', month: '2-digit', day: '2-digit', hour: '2-digit', minute: '2-digit', second: '2-digit' },
  })

/** Milliseconds that the clocks of a zone show at an instant, counted as if they stood in UTC. */
function shownAt(instant: Instant, zone: string): number {
  const shown = new Map(
    parts(zone)
      .formatToParts(instant)
      .map(({ type, value }) => [type, Number(value)]),
  )
  const of = (type: Intl.DateTimeFormatPartTypes): number => shown.get(type) ?? 0
  return Date.UTC(of('year'), of('month') - 1, of('day'), of('hour'), of('minute'), of('second'))
}

/**
 * The instant at which the clocks of an IANA zone show a time of a day; `minutes` after its midnight. Of a time that a zone
 * shows twice one of the two; of one that it leaves out, an hour beside it. Throws RangeError for an unknown zone.
 */
export function instantAt(day: EpochDay, minutes: number, zone: string): Instant {
  const wanted = day * 86_400_000 + minutes * 60_000
  const first = wanted - (shownAt(wanted, zone) - wanted)
  return first + (wanted - shownAt(first, zone))
}

/** "14:05" on the clocks of a zone. */
export const clockTime = (instant: Instant, zone: string): string => {
  const minutes = Math.floor(shownAt(instant, zone) / 60_000) % 1440
  return `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`
}
