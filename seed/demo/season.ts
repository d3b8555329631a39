import { asOfDay, type EpochDay, formatDay, parseDay } from '../../lib/assessment/time'
import type { SquadData } from './coast'

/** The invented coast keeps British time. */
export const zone = 'Europe/London'

/** The demo's today, a Saturday: the last session was this morning, and the desk is open. */
export const today = parseDay('2026-03-14')
export const firstDay = parseDay('2025-08-18')

/** Milliseconds of a clock time on a day of the season, in the programme's zone. */
export const instantOn = (day: EpochDay, hour: number, minute = 0): number =>
  asOfDay(day - 1, zone).instant + 1 + (hour * 60 + minute) * 60_000

/** Where the demo's clock stands when it is first opened. */
export const fixedNow = instantOn(today, 18)

/** 0 is Sunday. */
export const weekdayOf = (day: EpochDay): number => (day + 4) % 7

/** Days on which no club trains, both inclusive. */
const closed: readonly (readonly [string, string])[] = [
  ['2025-08-23', '2025-09-01'],
  ['2025-12-21', '2026-01-04'],
]

const isClosed = (day: EpochDay): boolean => closed.some(([from, to]) => day >= parseDay(from) && day <= parseDay(to))

/** The week in August in which everyone shows the first steps: two sessions a day, all squads. */
export const isCamp = (day: EpochDay): boolean => day < parseDay('2025-08-23')

/** Hours at which a squad begins on a day; none when it does not train. */
export function hoursOf(squad: SquadData, day: EpochDay): readonly number[] {
  if (isClosed(day)) return []
  if (isCamp(day)) return [10, 14]
  const weekday = weekdayOf(day)
  if (!squad.weekdays.includes(weekday)) return []
  return weekday === 6 ? [squad.saturdayHour] : [17]
}

/** The last Saturday session of each month is dived as a test. */
export const isTest = (day: EpochDay): boolean =>
  weekdayOf(day) === 6 && formatDay(day).slice(0, 7) !== formatDay(day + 7).slice(0, 7)

export const seasonDays = (): EpochDay[] => Array.from({ length: today - firstDay + 1 }, (_, index) => firstDay + index)
