import type { AgeLeaf, VenueLeaf } from '../../curriculum/requirement/model'
import { dateOf, dayOf, type EpochDay } from '../time'
import type { Evaluation } from './evaluation'
import type { Finding } from './finding'
import { leafFinding } from './leaf'

const onCalendar = (year: number, month: number, date: number): EpochDay => dayOf(new Date(Date.UTC(year, month, date)))

/** The day on which a whole age is reached; someone born on 29 February comes of age on 1 March of a common year. */
export function birthday(born: EpochDay, age: number, on: AgeLeaf['on']): EpochDay {
  const birth = dateOf(born)
  const year = birth.getUTCFullYear() + age
  return on === 'year-end' ? onCalendar(year, 0, 1) : onCalendar(year, birth.getUTCMonth(), birth.getUTCDate())
}

/** Whole years on the date, or on 31 December of its year. */
export function ageOn(born: EpochDay, day: EpochDay, on: AgeLeaf['on']): number {
  const years = dateOf(day).getUTCFullYear() - dateOf(born).getUTCFullYear()
  return birthday(born, years, on) <= day ? years : years - 1
}

/** Met inside the limits, both inclusive; unmet outside them; unproven without a birth date. */
export function ageFinding(leaf: AgeLeaf, { record, date }: Evaluation, waived: boolean): Finding {
  const { born } = record
  const age = born === null ? null : ageOn(born, date.day, leaf.on)
  if (waived) return leafFinding(leaf, 'met', { code: 'age waived', age })
  if (born === null || age === null) return leafFinding(leaf, 'unproven', { code: 'no birth date' })
  const { min, max } = leaf
  if (min !== undefined && age < min)
    return leafFinding(leaf, 'unmet', { code: 'too young', age, min, from: birthday(born, min, leaf.on) })
  if (max !== undefined && age > max) return leafFinding(leaf, 'unmet', { code: 'too old', age, max })
  return leafFinding(leaf, 'met', { code: 'of age', age })
}

/** What the diver's club was last known to have. */
export function venueFinding(leaf: VenueLeaf, { record }: Evaluation): Finding {
  const { feature } = leaf
  const known = record.venue
    .filter((fact) => fact.feature === feature)
    .reduce<(typeof record.venue)[number] | null>((a, b) => (a && a.receivedAt > b.receivedAt ? a : b), null)
  if (!known) return leafFinding(leaf, 'unproven', { code: 'venue unknown', feature })
  return known.has
    ? leafFinding(leaf, 'met', { code: 'venue has it', feature })
    : leafFinding(leaf, 'unmet', { code: 'venue lacks it', feature })
}
