import type { Scope } from '../../access/scope'
import { type Curriculum, type PairKey, pairKey } from '../../curriculum/edition/curriculum'
import type { Place } from '../../curriculum/place'
import { getEditionInForce } from '../../curriculum/store/editions'
import { asAccount, type Tx } from '../../platform/db'
import { mayKeepVideo } from '../consent'
import { dayIn, type EpochDay, type Instant } from '../time'
import { listConsents } from './consents'
import { type DiverHere, listDivers } from './divers-here'

/** An attempt that was filmed and waits for its clip. */
export interface WaitingAttempt {
  readonly attempt: string
  /** The club at writing, which is part of the attempt's key. */
  readonly club: string
  readonly diver: DiverHere
  readonly pair: PairKey
  /** The coach who marked it. */
  readonly coach: string
  readonly clip: number
  /** When it was marked, in the programme's time: the device's clock with all of its measured offset. */
  readonly at: Instant
  /** Day of that in the club's zone. */
  readonly day: EpochDay
  /** False while no consent to video of the diver is in force: it cannot be linked. */
  readonly video: boolean
}

interface Row {
  readonly attemptId: string
  readonly clubId: string
  readonly diverId: string
  readonly coachId: string
  readonly clip: number
  readonly filmedAt: Date
  readonly offsetMs: bigint
  readonly skill: string
  readonly place: string
}

/**
 * What waits for its clip, the oldest first: of divers in scope, marked by the scope's coach herself or, where she is the head
 * coach of the diver's club, by anybody. `only` names attempts.
 */
export async function listWaiting(tx: Tx, scope: Scope, only?: readonly string[]): Promise<WaitingAttempt[]> {
  const named = only ? [...only] : null
  const rows = await tx.$queryRaw<Row[]>`
    SELECT f."attemptId", f."clubId", f."diverId", f."coachId", f."clip", f."filmedAt", f."offsetMs", a."skill", a."place"
    FROM "FilmedAttempt" f JOIN "Attempt" a ON a."clubId" = f."clubId" AND a."id" = f."attemptId"
    WHERE (${named}::uuid[] IS NULL OR f."attemptId" = ANY (${named}::uuid[])) AND NOT EXISTS (
      SELECT FROM "FilmedOutcome" o WHERE o."clubId" = f."clubId" AND o."attemptId" = f."attemptId")`
  if (rows.length === 0) return []
  const ids = [...new Set(rows.map(({ diverId }) => diverId))]
  const divers = new Map((await listDivers(tx, scope, ids)).map((diver) => [diver.id, diver]))
  const consents = await listConsents(tx, ids)
  const posts = await tx.membership.findMany({ where: { accountId: scope.account, role: 'head', to: null } })
  const headed = new Set(posts.map(({ clubId }) => clubId))
  return rows
    .flatMap((row): WaitingAttempt[] => {
      const diver = divers.get(row.diverId)
      if (!diver || (row.coachId !== scope.account && !headed.has(diver.club))) return []
      const at = row.filmedAt.getTime() + Number(row.offsetMs)
      return [
        {
          attempt: row.attemptId,
          club: row.clubId,
          diver,
          pair: pairKey({ skill: row.skill, place: row.place as Place }),
          coach: row.coachId,
          clip: row.clip,
          at,
          day: dayIn(at, diver.zone),
          video: mayKeepVideo(consents(row.diverId)),
        },
      ]
    })
    .sort((a, b) => a.at - b.at || (a.attempt < b.attempt ? -1 : 1))
}

export interface WaitingClips {
  readonly curriculum: Curriculum
  readonly waiting: readonly WaitingAttempt[]
  /** Names of the coaches, by account. */
  readonly coaches: ReadonlyMap<string, string>
}

/** What waits for its clip, as a page shows it. `scope` is a coaching scope. */
export function readWaiting(scope: Scope): Promise<WaitingClips> {
  return asAccount(scope.account, async (tx) => {
    const waiting = await listWaiting(tx, scope)
    const ids = [...new Set(waiting.map(({ coach }) => coach))]
    const accounts = await tx.account.findMany({ where: { id: { in: ids } }, select: { id: true, name: true } })
    return {
      curriculum: await getEditionInForce(tx, scope),
      waiting,
      coaches: new Map(accounts.map(({ id, name }) => [id, name])),
    }
  })
}
