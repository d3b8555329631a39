import type { Scope } from '../../access/scope'
import { pairKey } from '../../curriculum/edition/curriculum'
import type { Place } from '../../curriculum/place'
import { getEditionInForce } from '../../curriculum/store/editions'
import { asAccount, type Tx } from '../../platform/db'
import { programmeInstant } from '../device-clock'
import { type CallFact, type Entry, type ListedTarget, listEntries } from '../lists'
import { type Evaluation, evaluationOf } from '../readiness/evaluation'
import type { Words } from '../readiness/wording'
import type { TargetKey } from '../record'
import { asOfInstant, dayIn } from '../time'
import { type Person, readReadiness } from './reads'
import { type DiverFile, listDiverFiles } from './records'

/** One diver with what waits about her: her record is evaluated once, for all lists. */
export interface DiverReview {
  readonly file: DiverFile
  readonly evaluation: Evaluation
  readonly words: Words
  readonly entries: readonly Entry[]
}

/** What waits for a head coach in the clubs named. */
export interface Review {
  readonly divers: readonly DiverReview[]
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

const dayOf = (date: Date): number => dayIn(date.getTime(), 'UTC')

/** Reads what waits for the head coach of `clubs`, which lie within her scope: each diver's rows and record once. */
export async function readReview(scope: Scope, clubs: readonly string[]): Promise<Review> {
  const readiness = await readReadiness(scope)
  return asAccount(scope.account, async (tx) => {
    const curriculum = await getEditionInForce(tx, scope)
    const files = (await listDiverFiles(tx, scope)).filter((file) => clubs.includes(file.club))
    const zones = new Map(
      (await tx.club.findMany({ select: { id: true, zone: true } })).map((row) => [row.id, row.zone]),
    )
    const zoneOf = (club: string) => zones.get(club) ?? scope.zone
    const calls = await listUnratedCalls(
      tx,
      files.map((file) => file.id),
    )
    const listed = readiness.filter((row) => row.ready || row.held === 'to review')
    const people = await tx.account.findMany({ select: { id: true, name: true, initials: true } })
    return {
      people: new Map(people.map((row) => [row.id, row])),
      divers: files.map((file): DiverReview => {
        const date = asOfInstant(scope.at, file.zone)
        const evaluation = evaluationOf(curriculum, file.record, date)
        const named = listed.flatMap((row): ListedTarget[] => {
          if (row.diverId !== file.id) return []
          const since = row.readySince ? dayOf(row.readySince) : date.day
          return [{ target: row.target as TargetKey, since: row.ready ? since : null }]
        })
        const own = calls.filter((row) => row.diverId === file.id).map((row) => toCall(row, zoneOf))
        return {
          file,
          evaluation,
          words: { curriculum, today: date.day, diver: file.givenName },
          entries: listEntries(evaluation, own, named),
        }
      }),
    }
  })
}
