import type { Scope } from '../../access/scope'
import { type Curriculum, pairKey } from '../../curriculum/edition/curriculum'
import type { Place } from '../../curriculum/place'
import { asAccount, type Tx } from '../../platform/db'
import { programmeInstant } from '../device-clock'
import { type CallFact, type Entry, type ListedTarget, otherEntries, recordEntries } from '../lists'
import { type Evaluation, evaluationOf } from '../readiness/evaluation'
import type { Words } from '../readiness/wording'
import { asOfInstant, dayIn } from '../time'
import type { DiverHere } from './divers-here'
import { type DiverQuestions, readQuestions } from './questions'
import { listPeople, type Person } from './reads'
import { listDiverFiles } from './records'
import { type DiverStanding, readStandings } from './standings'

/** One diver with what waits about her. */
export interface DiverReview {
  readonly here: DiverHere
  readonly words: Words
  readonly entries: readonly Entry[]
}

/** What waits for a head coach in the clubs named. */
export interface Review {
  readonly divers: readonly DiverReview[]
  /** The records of those who have a level or board move on a list, each evaluated once. */
  readonly evaluations: ReadonlyMap<string, Evaluation>
  /** What was asked about their moments, and who people are. */
  readonly questions: (diver: string) => DiverQuestions
  readonly people: ReadonlyMap<string, Person>
}

interface CallRow {
  readonly id: string
  readonly diverId: string
  readonly clubId: string
  readonly coachId: string
  readonly skill: string
  readonly place: string
  readonly count: number
  readonly calledAt: Date
  readonly offsetMs: bigint
  readonly dived: readonly number[]
}

/** The calls about some divers that nobody closed and that have numbers without an attempt. */
const listUnratedCalls = (tx: Tx, divers: readonly string[]): Promise<CallRow[]> =>
  tx.$queryRaw<CallRow[]>`
    SELECT c."id", c."diverId", c."clubId", c."coachId", c."skill", c."place", c."count", c."calledAt", c."offsetMs",
      coalesce(array_agg(DISTINCT a."callNumber") FILTER (WHERE a."callNumber" <= c."count"), '{}') AS "dived"
    FROM "Call" c LEFT JOIN "Attempt" a ON a."clubId" = c."clubId" AND a."callId" = c."id"
    WHERE c."diverId" = ANY (${[...divers]}::uuid[])
      AND NOT EXISTS (SELECT FROM "CallClosure" k WHERE k."callId" = c."id")
    GROUP BY c."clubId", c."id"
    HAVING count(DISTINCT a."callNumber") FILTER (WHERE a."callNumber" <= c."count") < c."count"
    ORDER BY c."calledAt"`

function toCall(row: CallRow, zoneOf: (club: string) => string): CallFact {
  const calledAt = programmeInstant(row.calledAt.getTime(), Number(row.offsetMs))
  return {
    id: row.id,
    pair: pairKey({ skill: row.skill, place: row.place as Place }),
    coach: row.coachId,
    day: dayIn(calledAt, zoneOf(row.clubId)),
    count: row.count,
    dived: row.dived,
  }
}

const listed = ({ rows }: DiverStanding): ListedTarget[] =>
  rows
    .filter((row) => row.ready || row.held === 'to review')
    .map((row) => ({ target: row.target, since: row.ready ? row.readySince : null }))

// What a record yields depends on the record, the edition and the day: as long as no readiness row of a diver was written
// again, nothing about her has changed, and what was read serves the next page. Nothing in it is a name or a word.
const kept = new Map<string, { readonly version: string; readonly entries: readonly Entry[] }>()
const mostKept = 2000

function keep(diver: string, version: string, entries: readonly Entry[]): void {
  kept.delete(diver)
  kept.set(diver, { version, entries })
  for (const oldest of kept.keys()) {
    if (kept.size <= mostKept) break
    kept.delete(oldest)
  }
}

/** What each diver's record was when it was last written: asked before the record is read, so that it is never newer than that. */
async function listVersions(tx: Tx, curriculum: Curriculum, divers: readonly DiverHere[], at: number) {
  const ids = divers.map(({ id }) => id)
  // The transaction that wrote a row: each refresh of a diver has one of its own.
  const rows = await tx.$queryRaw<{ diverId: string; written: string }[]>`
    SELECT "diverId", string_agg(DISTINCT xmin::text, ' ') AS "written" FROM "Readiness"
    WHERE "diverId" = ANY (${ids}::uuid[]) GROUP BY "diverId"`
  const written = new Map(rows.map((row) => [row.diverId, row.written]))
  return new Map(
    divers.map(({ id, club, zone }) => [id, [written.get(id), club, curriculum.hash, dayIn(at, zone)].join(' ')]),
  )
}

/** Reads what waits for the head coach of `clubs`, which lie within her scope; only records that changed are read. */
export async function readReview(scope: Scope, clubs: readonly string[]): Promise<Review> {
  const standings = await readStandings(scope)
  const { curriculum } = standings
  const divers = standings.divers.filter(({ club }) => clubs.includes(club))
  return asAccount(
    scope.account,
    async (tx) => {
      const versions = await listVersions(tx, curriculum, divers, scope.at)
      const fresh = divers.filter(({ id }) => kept.get(id)?.version !== versions.get(id))
      const wanted = new Set([...fresh, ...divers.filter((diver) => listed(diver).length > 0)].map(({ id }) => id))
      const files = wanted.size > 0 ? await listDiverFiles(tx, scope, [...wanted]) : []
      const evaluations = new Map(
        files.map((file) => [file.id, evaluationOf(curriculum, file.record, asOfInstant(scope.at, file.zone))]),
      )
      for (const { id } of fresh) {
        const evaluation = evaluations.get(id)
        if (evaluation) keep(id, versions.get(id) ?? '', recordEntries(evaluation))
      }
      const zones = new Map(
        (await tx.club.findMany({ select: { id: true, zone: true } })).map((row) => [row.id, row.zone]),
      )
      const calls = await listUnratedCalls(
        tx,
        divers.map(({ id }) => id),
      )
      const zoneOf = (club: string) => zones.get(club) ?? scope.zone
      return {
        evaluations,
        questions: await readQuestions(tx, [...evaluations.keys()]),
        people: await listPeople(tx),
        divers: divers.map((here): DiverReview => {
          const today = dayIn(scope.at, here.zone)
          const own = calls.filter((row) => row.diverId === here.id).map((row) => toCall(row, zoneOf))
          return {
            here,
            words: { curriculum, today, diver: here.givenName },
            entries: [...(kept.get(here.id)?.entries ?? []), ...otherEntries(own, listed(here), today)],
          }
        }),
      }
    },
    { timeout: 60_000 },
  )
}
