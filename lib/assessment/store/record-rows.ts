import type {
  Attempt,
  Decision,
  FilmedOutcome,
  Incident,
  Observation,
  Recognition,
  Release,
  Revocation,
  SignOff,
  StandDown,
  VenueFlag,
} from '../../../generated/prisma/client'
import type { Tx } from '../../platform/db'

/** What the record of a diver is made of: the columns that `toRecord` reads, and no others. */
export interface Rows {
  readonly attempts: readonly AttemptRow[]
  readonly observations: readonly ObservationRow[]
  readonly links: readonly LinkRow[]
  readonly signOffs: readonly Omit<SignOff, 'editionHash' | 'reasonId' | 'ledgerSeq'>[]
  readonly revocations: readonly Pick<Revocation, 'diverId' | 'subjectId' | 'at'>[]
  readonly recognitions: readonly Omit<Recognition, 'reasonId' | 'ledgerSeq'>[]
  readonly decisions: readonly DecisionRow[]
  readonly incidents: readonly IncidentRow[]
  readonly releases: readonly Pick<Release, 'diverId' | 'kind' | 'subjectId' | 'at'>[]
  readonly standDowns: readonly Pick<StandDown, 'id' | 'diverId' | 'closes' | 'from' | 'until' | 'at'>[]
}

export type AttemptRow = Pick<
  Attempt,
  | 'id'
  | 'clubId'
  | 'diverId'
  | 'skill'
  | 'place'
  | 'atLevel'
  | 'attemptedAt'
  | 'receivedAt'
  | 'called'
  | 'cued'
  | 'closedThen'
  | 'flags'
> & { readonly offsetMs: bigint | number }
export type ObservationRow = Pick<
  Observation,
  | 'id'
  | 'attemptId'
  | 'diverId'
  | 'coachId'
  | 'observedOn'
  | 'receivedAt'
  | 'ratings'
  | 'imputed'
  | 'withinScope'
  | 'momentCount'
  | 'faults'
  | 'supersedesId'
>
/** A video that was linked to a coach's view of an attempt after that was kept. */
export type LinkRow = Pick<FilmedOutcome, 'diverId' | 'attemptId' | 'coachId' | 'at'>
type DecisionRow = Pick<
  Decision,
  'id' | 'clubId' | 'diverId' | 'target' | 'outcome' | 'by' | 'decidedAt' | 'waivesAge' | 'wantsMoreOf'
>
type IncidentRow = Pick<Incident, 'id' | 'diverId' | 'skill' | 'place' | 'kind' | 'happenedAt' | 'receivedAt'> & {
  readonly offsetMs: bigint | number
}

/** What is known of the clubs: their zones, and what they have. */
export interface ClubRows {
  readonly clubs: readonly { readonly id: string; readonly zone: string }[]
  /** The oldest first. */
  readonly venue: readonly Pick<VenueFlag, 'clubId' | 'feature' | 'has' | 'recordedAt'>[]
}

/** Columns that are times or dates, by kind of row: JSON has them as text. */
const times: Readonly<Record<keyof (Rows & ClubRows), readonly string[]>> = {
  clubs: [],
  venue: ['recordedAt'],
  attempts: ['attemptedAt', 'receivedAt'],
  observations: ['receivedAt'],
  links: ['at'],
  signOffs: ['signedAt'],
  revocations: ['at'],
  recognitions: ['recognisedAt'],
  decisions: ['decidedAt'],
  incidents: ['happenedAt', 'receivedAt'],
  releases: ['at'],
  standDowns: ['from', 'until', 'at'],
}

function readRows(text: string, columns: readonly string[]): Record<string, unknown>[] {
  const rows: Record<string, unknown>[] = JSON.parse(text)
  for (const row of rows)
    for (const column of columns) {
      const time = row[column]
      if (typeof time === 'string') row[column] = new Date(time)
    }
  return rows
}

/**
 * All rows about some divers, and about the clubs in sight, in one round trip, each table as one JSON text: row by row the client would take several times
 * as long over a season of dives. Row-level security holds as for any other read.
 */
export async function listRows(tx: Tx, divers: readonly string[]): Promise<Rows & ClubRows> {
  const ids = [...divers]
  const [texts] = await tx.$queryRaw<Record<keyof typeof times, string>[]>`SELECT
    (SELECT coalesce(json_agg(r), '[]')::text FROM (SELECT "id", "zone" FROM "Club") r) AS "clubs",
    (SELECT coalesce(json_agg(r), '[]')::text FROM (
      SELECT "clubId", "feature", "has", "recordedAt" FROM "VenueFlag" ORDER BY "recordedAt") r) AS "venue",
    (SELECT coalesce(json_agg(r), '[]')::text FROM (
      SELECT "id", "clubId", "diverId", "skill", "place", "atLevel", "attemptedAt", "offsetMs", "receivedAt", "called", "cued",
        "closedThen", "flags" FROM "Attempt" WHERE "diverId" = ANY (${ids}::uuid[]) ORDER BY "attemptedAt", "id") r) AS "attempts",
    (SELECT coalesce(json_agg(r), '[]')::text FROM (
      SELECT "id", "attemptId", "diverId", "coachId", "observedOn", "receivedAt", "ratings", "imputed", "withinScope",
        "momentCount", "faults", "supersedesId" FROM "Observation" WHERE "diverId" = ANY (${ids}::uuid[])) r) AS "observations",
    (SELECT coalesce(json_agg(r), '[]')::text FROM (
      SELECT "diverId", "attemptId", "coachId", "at" FROM "FilmedOutcome"
        WHERE "outcome" = 'linked' AND "diverId" = ANY (${ids}::uuid[])) r) AS "links",
    (SELECT coalesce(json_agg(r), '[]')::text FROM (
      SELECT "id", "clubId", "diverId", "skill", "place", "level", "coachId", "signedAt", "method", "waiver", "evidence"
        FROM "SignOff" WHERE "diverId" = ANY (${ids}::uuid[]) ORDER BY "signedAt") r) AS "signOffs",
    (SELECT coalesce(json_agg(r), '[]')::text FROM (
      SELECT "diverId", "subjectId", "at" FROM "Revocation" WHERE "diverId" = ANY (${ids}::uuid[])) r) AS "revocations",
    (SELECT coalesce(json_agg(r), '[]')::text FROM (
      SELECT "id", "clubId", "diverId", "kind", "skill", "place", "level", "family", "by", "recognisedAt"
        FROM "Recognition" WHERE "diverId" = ANY (${ids}::uuid[]) ORDER BY "recognisedAt") r) AS "recognitions",
    (SELECT coalesce(json_agg(r), '[]')::text FROM (
      SELECT "id", "clubId", "diverId", "target", "outcome", "by", "decidedAt", "waivesAge", "wantsMoreOf"
        FROM "Decision" WHERE "diverId" = ANY (${ids}::uuid[]) ORDER BY "decidedAt") r) AS "decisions",
    (SELECT coalesce(json_agg(r), '[]')::text FROM (
      SELECT "id", "diverId", "skill", "place", "kind", "happenedAt", "offsetMs", "receivedAt"
        FROM "Incident" WHERE "diverId" = ANY (${ids}::uuid[])) r) AS "incidents",
    (SELECT coalesce(json_agg(r), '[]')::text FROM (
      SELECT "diverId", "kind", "subjectId", "at" FROM "Release" WHERE "diverId" = ANY (${ids}::uuid[])) r) AS "releases",
    (SELECT coalesce(json_agg(r), '[]')::text FROM (
      SELECT "id", "diverId", "closes", "from", "until", "at"
        FROM "StandDown" WHERE "diverId" = ANY (${ids}::uuid[])) r) AS "standDowns"`
  const kinds = Object.entries(times).map(([kind, columns]) => [
    kind,
    readRows(texts?.[kind as keyof typeof times] ?? '[]', columns),
  ])
  return Object.fromEntries(kinds) as Rows & ClubRows
}
