import type { VenueFlag } from '../../../generated/prisma/client'
import type { Family } from '../../curriculum/dives/model'
import { pairKey } from '../../curriculum/edition/curriculum'
import type { Rating } from '../../curriculum/model'
import type { Place } from '../../curriculum/place'
import type { VenueFeature } from '../../curriculum/requirement/model'
import { programmeInstant } from '../device-clock'
import type {
  AttemptFact,
  DecisionFact,
  DiverRecord,
  IncidentKind,
  ObservationFact,
  RecognitionFact,
  SignOffWaiver,
  TargetKey,
} from '../record'
import { dayIn, dayOf, type EpochDay } from '../time'
import type { ObservationRow, Rows } from './record-rows'

/** All rows about one diver, as stored. */
export interface RecordRows extends Rows {
  readonly venue: readonly Pick<VenueFlag, 'feature' | 'has' | 'recordedAt'>[]
  readonly born: EpochDay | null
  /** IANA zone of the club at writing: a day is a day there. */
  readonly zoneOf: (club: string) => string
}

const pairOf = (row: { skill: string; place: string }) => pairKey({ skill: row.skill, place: row.place as Place })

/** Instants by what they happened to. */
type Instants = ReadonlyMap<string, number>

function toObservation(row: ObservationRow, releases: Instants, links: Instants): ObservationFact {
  return {
    id: row.id,
    coach: row.coachId,
    observedOn: row.observedOn as 'deck' | 'video',
    receivedAt: row.receivedAt.getTime(),
    ratings: row.ratings as Record<string, Rating>,
    imputed: row.imputed as Record<string, Rating>,
    withinScope: row.withinScope,
    moments: row.momentCount,
    linkedAt: links.get(`${row.attemptId} ${row.coachId}`) ?? null,
    faults: row.faults,
    supersedes: row.supersedesId,
    raiseAcceptedAt: releases.get(`rating ${row.id}`) ?? null,
  }
}

function toAttempts(rows: RecordRows, releases: Instants): AttemptFact[] {
  // Of the coach's view of the attempt, whichever observation is in force: a correction does not lose it.
  const links = new Map(rows.links.map((row) => [`${row.attemptId} ${row.coachId}`, row.at.getTime()]))
  const seen = new Map<string, ObservationFact[]>()
  for (const row of rows.observations) {
    const list = seen.get(row.attemptId) ?? []
    list.push(toObservation(row, releases, links))
    seen.set(row.attemptId, list)
  }
  return rows.attempts
    .map((row) => {
      const attemptedAt = programmeInstant(row.attemptedAt.getTime(), Number(row.offsetMs))
      return {
        id: row.id,
        pair: pairOf(row),
        atLevel: row.atLevel,
        attemptedAt,
        receivedAt: row.receivedAt.getTime(),
        day: dayIn(attemptedAt, rows.zoneOf(row.clubId)),
        club: row.clubId,
        called: row.called,
        cued: row.cued,
        futureDated: row.flags.includes('future-dated'),
        closedThen: row.closedThen,
        releasedAt: releases.get(`attempt ${row.id}`) ?? null,
        observations: (seen.get(row.id) ?? []).sort((a, b) => a.receivedAt - b.receivedAt || (a.id < b.id ? -1 : 1)),
      }
    })
    .sort((a, b) => a.attemptedAt - b.attemptedAt || (a.id < b.id ? -1 : 1))
}

function toWhat(row: Rows['recognitions'][number]): RecognitionFact['what'] {
  if (row.kind === 'level') return { kind: 'level', level: row.level ?? '' }
  if (row.kind === 'boardMove') return { kind: 'boardMove', family: row.family as Family, to: row.place ?? '' }
  return { kind: 'holding', pair: pairOf({ skill: row.skill ?? '', place: row.place ?? '' }), level: row.level ?? '' }
}

const toDecision = (row: Rows['decisions'][number], day: EpochDay): DecisionFact => ({
  id: row.id,
  target: row.target as TargetKey,
  outcome: row.outcome as DecisionFact['outcome'],
  by: row.by,
  decidedAt: row.decidedAt.getTime(),
  receivedAt: row.decidedAt.getTime(),
  day,
  waivesAge: row.waivesAge,
  wantsMoreOf: row.wantsMoreOf as DecisionFact['wantsMoreOf'],
})

/** The engine's record of a diver from the rows about her. Pure: the same rows give the same record. */
export function toRecord(diver: string, rows: RecordRows): DiverRecord {
  const releases = new Map(rows.releases.map((row) => [`${row.kind} ${row.subjectId}`, row.at.getTime()]))
  const revoked = new Map(rows.revocations.map((row) => [row.subjectId, row.at.getTime()]))
  const dayThere = (at: Date, club: string) => dayIn(at.getTime(), rows.zoneOf(club))
  return {
    diver,
    born: rows.born,
    attempts: toAttempts(rows, releases),
    signOffs: rows.signOffs.map((row) => ({
      id: row.id,
      pair: pairOf(row),
      level: row.level,
      coach: row.coachId,
      signedAt: row.signedAt.getTime(),
      receivedAt: row.signedAt.getTime(),
      day: dayThere(row.signedAt, row.clubId),
      by: row.method as 'standard' | 'recheck',
      waiver: row.waiver as SignOffWaiver | null,
      evidence: row.evidence,
      revokedAt: revoked.get(row.id) ?? null,
    })),
    recognitions: rows.recognitions.map((row) => ({
      id: row.id,
      what: toWhat(row),
      by: row.by,
      recognisedAt: row.recognisedAt.getTime(),
      receivedAt: row.recognisedAt.getTime(),
      day: dayThere(row.recognisedAt, row.clubId),
      revokedAt: revoked.get(row.id) ?? null,
    })),
    decisions: rows.decisions.map((row) => toDecision(row, dayThere(row.decidedAt, row.clubId))),
    incidents: rows.incidents.map((row) => ({
      id: row.id,
      pair: pairOf(row),
      kind: row.kind as IncidentKind,
      happenedAt: programmeInstant(row.happenedAt.getTime(), Number(row.offsetMs)),
      receivedAt: row.receivedAt.getTime(),
      clearedAt: releases.get(`incident ${row.id}`) ?? null,
    })),
    standDowns: rows.standDowns.map((row) => ({
      id: row.id,
      closes: row.closes as 'water' | 'boards' | 'new',
      from: dayOf(row.from),
      until: row.until ? dayOf(row.until) : null,
      receivedAt: row.at.getTime(),
    })),
    venue: rows.venue.map((row) => ({
      feature: row.feature as VenueFeature,
      has: row.has,
      receivedAt: row.recordedAt.getTime(),
    })),
  }
}
