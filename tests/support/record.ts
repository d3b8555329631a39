import type {
  AttemptFact,
  DecisionFact,
  DiverRecord,
  IncidentFact,
  ObservationFact,
  RecognitionFact,
  SignOffFact,
  StandDownFact,
  TargetKey,
} from '../../lib/assessment/record'
import type { AsOf, EpochDay, Instant } from '../../lib/assessment/time'
import type { Pair, PairKey } from '../../lib/curriculum/edition/curriculum'
import type { Rating } from '../../lib/curriculum/model'

const day = 86_400_000
const minute = 60_000

/** The instant `minutes` after noon of a day, in UTC: builders write records of a club that lives there. */
export const noonOf = (onDay: EpochDay, minutes = 0): Instant => onDay * day + day / 2 + minutes * minute

/** As of the end of a day, in UTC. */
export const endOf = (onDay: EpochDay): AsOf => ({ day: onDay, instant: (onDay + 1) * day - 1 })

/** Every criterion of a pair rated the same. */
export const allRated = (pair: Pair, rating: Rating): Record<string, Rating> =>
  Object.fromEntries(pair.criteria.map(({ criterion }) => [criterion.key, rating]))

/** One coach's view; received with its attempt unless said otherwise. */
export const anObservation = (changes: Partial<ObservationFact> = {}): ObservationFact => ({
  id: `${changes.coach ?? 'ann'}-saw`,
  coach: 'ann',
  observedOn: 'deck',
  receivedAt: 0,
  ratings: {},
  imputed: {},
  withinScope: true,
  moments: 0,
  linkedAt: null,
  faults: [],
  supersedes: null,
  raiseAcceptedAt: null,
  ...changes,
})

/** What an attempt is built from: `rated` for one view by `coach`, or `observations`. */
interface AttemptChanges extends Partial<AttemptFact> {
  readonly rated?: Readonly<Record<string, Rating>>
  readonly coach?: string
  /** Minutes after noon, so that several of a day have an order. */
  readonly minute?: number
}

/** A called attempt, received at once, seen by one coach within scope. */
export function anAttempt(pair: PairKey, onDay: EpochDay, changes: AttemptChanges = {}): AttemptFact {
  const { rated = {}, coach = 'ann', minute: minutes = 0, ...facts } = changes
  const attemptedAt = facts.attemptedAt ?? noonOf(onDay, minutes)
  const receivedAt = facts.receivedAt ?? attemptedAt
  return {
    id: `${pair} ${onDay}:${minutes}`,
    pair,
    atLevel: 'one',
    attemptedAt,
    receivedAt,
    day: onDay,
    club: 'harbour',
    called: true,
    cued: false,
    futureDated: false,
    closedThen: false,
    releasedAt: null,
    observations: [anObservation({ coach, ratings: rated, receivedAt })],
    ...facts,
  }
}

/** Signed in the evening of a day, after its dives. */
export const aSignOff = (
  pair: PairKey,
  level: string,
  onDay: EpochDay,
  changes: Partial<SignOffFact> = {},
): SignOffFact => ({
  id: `signed ${pair} ${level} ${onDay}`,
  pair,
  level,
  coach: 'ann',
  signedAt: noonOf(onDay, 360),
  receivedAt: noonOf(onDay, 360),
  day: onDay,
  by: 'standard',
  waiver: null,
  evidence: [],
  revokedAt: null,
  ...changes,
})

/** Recognised in the evening of a day. */
export const aRecognition = (
  what: RecognitionFact['what'],
  onDay: EpochDay,
  changes: Partial<RecognitionFact> = {},
): RecognitionFact => ({
  id: `recognised ${JSON.stringify(what)} ${onDay}`,
  what,
  by: 'hana',
  recognisedAt: noonOf(onDay, 360),
  receivedAt: noonOf(onDay, 360),
  day: onDay,
  revokedAt: null,
  ...changes,
})

/** Decided late in the evening of a day, after its sign-offs. */
export const aDecision = (
  target: TargetKey,
  outcome: DecisionFact['outcome'],
  onDay: EpochDay,
  changes: Partial<DecisionFact> = {},
): DecisionFact => ({
  id: `${outcome} ${target} ${onDay}`,
  target,
  outcome,
  by: 'hana',
  decidedAt: noonOf(onDay, 420),
  receivedAt: noonOf(onDay, 420),
  day: onDay,
  waivesAge: false,
  wantsMoreOf: [],
  ...changes,
})

export const anIncident = (pair: PairKey, onDay: EpochDay, changes: Partial<IncidentFact> = {}): IncidentFact => ({
  id: `incident ${pair} ${onDay}`,
  pair,
  kind: 'too close',
  happenedAt: noonOf(onDay),
  receivedAt: noonOf(onDay),
  clearedAt: null,
  ...changes,
})

export const aStandDown = (
  closes: StandDownFact['closes'],
  from: EpochDay,
  changes: Partial<StandDownFact> = {},
): StandDownFact => ({
  id: `no ${closes} ${from}`,
  closes,
  from,
  until: null,
  receivedAt: noonOf(from),
  ...changes,
})

/** A diver of whom nothing is known but what is given. */
export const aRecord = (changes: Partial<DiverRecord> = {}): DiverRecord => ({
  diver: 'diver',
  born: null,
  attempts: [],
  signOffs: [],
  recognitions: [],
  decisions: [],
  incidents: [],
  standDowns: [],
  venue: [],
  ...changes,
})
