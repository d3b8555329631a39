import { v7 as uuidv7 } from 'uuid'
import type { Scope } from '../../access/scope'
import { asAccount, type Tx } from '../../platform/db'
import { mayKeepVideo } from '../consent'
import { type Outcome, refuse } from '../outcome'
import { judgeGrant } from '../second-look'
import { listConsents } from './consents'
import { lockDiver, notFound } from './desk'
import { isHeadOf } from './head-coaches'

/** A coach of another club whom a head coach may ask. */
export interface LookCoach {
  readonly id: string
  readonly name: string
  readonly club: string
}

/** One attempt granted to one coach, in force. */
export interface LookGrant {
  readonly attempt: string
  readonly coach: string
}

/** Coaches of other clubs; whoever coaches in a club of this account too looks as one of the club. */
async function listCoaches(tx: Tx, scope: Scope): Promise<LookCoach[]> {
  const coaches = await tx.$queryRaw<LookCoach[]>`SELECT * FROM video_coaches()`
  const own = await tx.membership.findMany({ where: { clubId: { in: [...(scope.clubs ?? [])] }, to: null } })
  return coaches.filter(({ id }) => !own.some(({ accountId }) => accountId === id))
}

/** The latest row of each attempt and coach counts. */
async function listGrants(tx: Tx, diver: string): Promise<LookGrant[]> {
  const rows = await tx.videoGrant.findMany({ where: { diverId: diver }, orderBy: [{ at: 'asc' }, { id: 'asc' }] })
  const latest = new Map(rows.map((row) => [`${row.attemptId} ${row.coachId}`, row]))
  return [...latest.values()]
    .filter(({ granted }) => granted)
    .map(({ attemptId, coachId }) => ({ attempt: attemptId, coach: coachId }))
}

async function isOpen(tx: Tx, scope: Scope): Promise<boolean> {
  const rows = await tx.$queryRaw<{ open: boolean }[]>`SELECT video_opened(${scope.programme}::uuid) AS open`
  return rows[0]?.open ?? false
}

/** What a head coach sees of looks from other clubs: whom she may ask (nobody while it is closed), and what is granted. */
export const readGrants = (scope: Scope, diver: string) =>
  asAccount(scope.account, async (tx) => ({
    coaches: await listCoaches(tx, scope),
    grants: await listGrants(tx, diver),
  }))

/** Whether looks across clubs are open in the programme. */
export const readOpening = (scope: Scope): Promise<boolean> => asAccount(scope.account, (tx) => isOpen(tx, scope))

/** Opens or closes looks across clubs; what was granted before holds again when it is opened again. For the lead. */
export function setOpening(scope: Scope, open: boolean): Promise<void> {
  return asAccount(scope.account, async (tx) => {
    const at = new Date(scope.at)
    const id = uuidv7({ msecs: scope.at })
    await tx.videoOpening.create({ data: { id, programmeId: scope.programme, open, by: scope.account, at } })
  })
}

/** Grants an attempt to a coach of another club, or withdraws it from her at once. For the diver's head coach. */
export function setGrant(scope: Scope, request: LookGrant & { readonly granted: boolean }): Promise<Outcome> {
  return asAccount(scope.account, async (tx) => {
    const row = await tx.attempt.findFirst({ where: { id: request.attempt }, select: { diverId: true } })
    const now = row ? await lockDiver(tx, scope, row.diverId) : null
    const attempt = now?.evaluation.record.attempts.find(({ id }) => id === request.attempt)
    if (!now || !attempt) return notFound
    const { file } = now
    if (!(await isHeadOf(tx, scope, file.club)))
      return refuse('not the head coach', 'The diver’s head coach grants and withdraws looks from other clubs.')
    const isHers = (grant: LookGrant) => grant.attempt === attempt.id && grant.coach === request.coach
    const granted = (await listGrants(tx, file.id)).some(isHers)
    if (!request.granted && !granted) return refuse('not granted', 'It is not granted to this coach.')
    const judged = judgeGrant({
      attempt,
      open: await isOpen(tx, scope),
      video: mayKeepVideo((await listConsents(tx, [file.id]))(file.id)),
      fromElsewhere: (await listCoaches(tx, scope)).some(({ id }) => id === request.coach),
      granted,
      coach: request.coach,
    })
    if (request.granted && !judged.ok) return judged
    const id = uuidv7({ msecs: scope.at })
    await tx.videoGrant.create({
      data: {
        id,
        clubId: file.club,
        diverId: file.id,
        attemptId: attempt.id,
        coachId: request.coach,
        granted: request.granted,
        by: scope.account,
        at: new Date(scope.at),
      },
    })
    return { ok: true, id }
  })
}
