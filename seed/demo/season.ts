import { asOfDay, type EpochDay, formatDay, parseDay } from '../../lib/assessment/time'
import type { SquadData } from './coast'

/** The invented coast keeps British time. */
export const zone = 'Europe/London'

/** The demo's today, a Saturday: the last session was this morning, and the desk is open. */
export const today = parseDay('2026-03-14')
/** The first day of the first of two seasons. */
export const firstDay = parseDay('2024-09-02')

/** Milliseconds of a clock time on a day of the season, in the programme's zone. */
export const instantOn = (day: EpochDay, hour: number, minute = 0): number =>
  asOfDay(day - 1, zone).instant + 1 + (hour * 60 + minute) * 60_000

/** Where the demo's clock stands when it is first opened. */
export const fixedNow = instantOn(today, 18)

/** 0 is Sunday. */
export const weekdayOf = (day: EpochDay): number => (day + 4) % 7

/** Days on which no club trains, both inclusive; the longest is the summer between the seasons. */
const closed: readonly (readonly [string, string])[] = [
  ['2024-12-21', '2025-01-05'],
  ['2025-04-12', '2025-04-21'],
  ['2025-07-20', '2025-08-24'],
  ['2025-12-21', '2026-01-04'],
]

const isClosed = (day: EpochDay): boolean => closed.some(([from, to]) => day >= parseDay(from) && day <= parseDay(to))

/** Whether a squad has a rated session on a day. */
export const trains = (squad: SquadData, day: EpochDay): boolean =>
  !isClosed(day) && squad.weekdays.includes(weekdayOf(day))

/** The last session of each month is dived as a test. */
export const isTest = (day: EpochDay): boolean => formatDay(day).slice(0, 7) !== formatDay(day + 7).slice(0, 7)

export const seasonDays = (): EpochDay[] => Array.from({ length: today - firstDay + 1 }, (_, index) => firstDay + index)
