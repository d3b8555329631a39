import type { Curriculum } from '../../curriculum/edition/curriculum'
import type { AgeLeaf, CriterionLeaf, RequirementReader } from '../../curriculum/requirement/model'
import { readRequirement } from '../../curriculum/requirement/model'
import { listNodes } from '../../curriculum/requirement/references'
import { listTargets as listTreeTargets } from '../../curriculum/tree/target'
import type { DiverRecord, TargetKey } from '../record'
import { recognitionDays } from '../signed'
import { type AsOf, asOfDay, dayIn, type EpochDay, type Instant } from '../time'
import { birthday } from './leaf-age'
import { evaluateTarget } from './targets'

/** A leaf whose answer a date can change by itself. */
type Dated = CriterionLeaf | AgeLeaf
const none = (): Dated[] => []

const dated: RequirementReader<Dated[], null> = {
  all: none,
  any: none,
  atLeast: none,
  // Sign-offs lapse by the spans of every standard, and a list changes with the sign-offs that it is made of.
  signOff: none,
  diveList: none,
  criterion: (leaf) => [leaf],
  level: none,
  boardMove: none,
  age: (leaf) => [leaf],
  venue: none,
}

const datedIn = (curriculum: Curriculum): Dated[] =>
  listTreeTargets(curriculum)
    .flatMap(({ requirement }) => (requirement ? listNodes(requirement) : []))
    .flatMap(({ node }) => readRequirement(dated, node, null))

/** Days after a dive or a signing on which something that rests on it can change. */
function spansOf(curriculum: Curriculum): { readonly dive: number[]; readonly signing: number[] } {
  const standards = [...curriculum.pairs.values()].map(({ standard }) => standard)
  const windows = [
    ...standards.map(({ withinDays }) => withinDays),
    ...datedIn(curriculum).flatMap((leaf) => (leaf.kind === 'criterion' ? [leaf.withinDays] : [])),
  ]
  const lapses = standards.flatMap(({ validForDays, recheckWithinDays }) => [
    validForDays + 1,
    validForDays + recheckWithinDays + 1,
  ])
  const gaps = curriculum.layOff.map(({ afterDays }) => afterDays + 1)
  const recognitions = [recognitionDays + 1, ...standards.map((one) => recognitionDays + one.recheckWithinDays + 1)]
  const distinct = (days: readonly number[]) => [...new Set(days)]
  return { dive: distinct([0, ...windows, ...lapses, ...gaps]), signing: distinct([...lapses, ...recognitions]) }
}

function birthdays(curriculum: Curriculum, born: EpochDay | null): EpochDay[] {
  if (born === null) return []
  return datedIn(curriculum).flatMap((leaf) => {
    if (leaf.kind !== 'age') return []
    const { min, max, on } = leaf
    return [
      ...(min === undefined ? [] : [birthday(born, min, on)]),
      ...(max === undefined ? [] : [birthday(born, max + 1, on)]),
    ]
  })
}

/** Instants at which something became known. */
function knownAt(record: DiverRecord): Instant[] {
  const instants: (Instant | null)[] = [
    ...record.attempts.flatMap(({ receivedAt, releasedAt, observations }) => [
      receivedAt,
      releasedAt,
      ...observations.flatMap((seen) => [seen.receivedAt, seen.raiseAcceptedAt, seen.linkedAt]),
    ]),
    ...[...record.signOffs, ...record.recognitions].flatMap(({ receivedAt, revokedAt }) => [receivedAt, revokedAt]),
    ...record.incidents.flatMap(({ receivedAt, clearedAt }) => [receivedAt, clearedAt]),
    ...[...record.decisions, ...record.standDowns, ...record.venue].map(({ receivedAt }) => receivedAt),
  ]
  return instants.filter((instant) => instant !== null)
}

/**
 * The days on which a finding of this diver can change, ascending, past and to come: days on which something became
 * known, windows end, sign-offs lapse, stand-downs begin and end, ages are reached. Between two of them nothing changes.
 */
export function changeDays(curriculum: Curriculum, record: DiverRecord, zone: string): EpochDay[] {
  const { dive, signing } = spansOf(curriculum)
  const signed = [...record.signOffs, ...record.recognitions]
  const days = new Set([
    ...[...new Set(knownAt(record))].map((instant) => dayIn(instant, zone)),
    ...[...new Set(record.attempts.map(({ day }) => day))].flatMap((day) => dive.map((span) => day + span)),
    ...signed.flatMap(({ day }) => signing.map((span) => day + span)),
    ...record.standDowns.flatMap(({ from, until }) => (until === null ? [from] : [from, until + 1])),
    ...birthdays(curriculum, record.born),
  ])
  return [...days].sort((a, b) => a - b)
}

/** A target that was found ready on a day, and since when; nothing that came in later on that day changed it. */
export interface KnownReady {
  readonly since: EpochDay
  readonly on: EpochDay
}

/**
 * The first day of the current unbroken interval in which the target has been ready, as of the end of each day in
 * `zone`; null when it is not ready on `date`. Walks back over the days on which the finding could change; what is known
 * already spares the days up to `known.on`, as long as it was still ready when that day ended.
 */
export function readySince(
  curriculum: Curriculum,
  record: DiverRecord,
  target: TargetKey,
  date: AsOf,
  zone: string,
  known: KnownReady | null = null,
): EpochDay | null {
  if (!evaluateTarget(curriculum, record, target, date).ready) return null
  let since = date.day
  for (const day of changeDays(curriculum, record, zone).reverse()) {
    if (day > date.day) continue
    if (known && day <= known.on) return known.since
    const then = { day, instant: Math.min(date.instant, asOfDay(day, zone).instant) }
    if (!evaluateTarget(curriculum, record, target, then).ready) return since
    since = day
  }
  return since
}
