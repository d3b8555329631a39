import { ageOn } from '../assessment/readiness/leaf-age'
import type { EpochDay } from '../assessment/time'

/**
 * Ages on 31 December of the year, whole years. From 12 on the bands are the age groups of the trade (World Aquatics, DV 13.2);
 * those below and above them are this report's own.
 */
export const ageBands = ['to 9', '10-11', '12-13', '14-15', '16-18', '19 on', 'unknown'] as const
export type AgeBand = (typeof ageBands)[number]

/** Each band as it is read: in tables, choices and exports. */
export const ageBandName: Readonly<Record<AgeBand, string>> = {
  'to 9': '9 and under',
  '10-11': '10 and 11',
  '12-13': '12 and 13',
  '14-15': '14 and 15',
  '16-18': '16 to 18',
  '19 on': '19 and over',
  unknown: 'no birth date',
}

const upTo: readonly (readonly [number, AgeBand])[] = [
  [9, 'to 9'],
  [11, '10-11'],
  [13, '12-13'],
  [15, '14-15'],
  [18, '16-18'],
]

/** The band of a diver in the year of `today`; 'unknown' without a birth date. */
export function ageBandOf(born: EpochDay | null, today: EpochDay): AgeBand {
  if (born === null) return 'unknown'
  const age = ageOn(born, today, 'year-end')
  return upTo.find(([most]) => age <= most)?.[1] ?? '19 on'
}
