const time = new Intl.DateTimeFormat('en-GB', {
  weekday: 'short',
  day: 'numeric',
  month: 'short',
  hour: '2-digit',
  minute: '2-digit',
})

/** An instant on this phone's clock, e.g. `Tue 3 Mar, 16:30`. */
export const when = (instant: number): string => time.format(instant)
