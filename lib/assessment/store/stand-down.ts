import { v7 as uuidv7 } from 'uuid'
import type { Scope } from '../../access/scope'
import { asAccount } from '../../platform/db'
import { type Outcome, refuse } from '../outcome'
import type { ClosesKind } from '../record'
import { endOf, refuseStandDown } from '../stand-down'
import { dateOf, type EpochDay, formatDay } from '../time'
import { lockDiver, notFound } from './desk'
import { isHeadOf } from './head-coaches'
import { appendLedger } from './ledger'
import { refreshReadiness } from './readiness'
import { keepWords } from './words'

const notHead = refuse('not the head coach', 'Only the diver’s head coach stands a diver down, and ends it.')

export interface NewStandDown {
  readonly diver: string
  readonly closes: ClosesKind
  readonly from: EpochDay
  readonly until: EpochDay | null
  /** Read by the head coaches of the diver's club and by nobody else; may stay unsaid. */
  readonly reason: string
}

/** Keeps a diver from the water, the boards or anything new. The ledger and everybody else learn what, never why. */
export function standDown(scope: Scope, request: NewStandDown): Promise<Outcome> {
  return asAccount(scope.account, async (tx) => {
    const now = await lockDiver(tx, scope, request.diver)
    if (!now) return notFound
    const { file, curriculum, evaluation } = now
    if (!(await isHeadOf(tx, scope, file.club))) return notHead
    const refusal = refuseStandDown(request, evaluation.date.day)
    if (refusal) return { ok: false, refusal }
    const { closes, from, until } = request
    const about = { club: file.club, diver: file.id, writtenBy: scope.account, readers: 'head' } as const
    const reason = request.reason.trim() ? await keepWords(tx, about, request.reason.trim()) : null
    const id = uuidv7({ msecs: scope.at })
    const ledgerSeq = await appendLedger(tx, scope, {
      kind: 'stood down',
      standDown: id,
      diver: file.id,
      club: file.club,
      closes,
      from: formatDay(from),
      until: until === null ? null : formatDay(until),
      by: scope.account,
    })
    await tx.standDown.create({
      data: {
        id,
        clubId: file.club,
        diverId: file.id,
        closes,
        from: dateOf(from),
        until: until === null ? null : dateOf(until),
        by: scope.account,
        at: new Date(scope.at),
        reasonId: reason?.id ?? null,
        ledgerSeq,
      },
    })
    await refreshReadiness(tx, scope, curriculum, [file.id])
    return { ok: true, id }
  })
}

/** Ends a stand-down, once: the diver is free from `freeFrom` on. For the diver's head coach. */
export function endStandDown(
  scope: Scope,
  request: { readonly diver: string; readonly standDown: string; readonly freeFrom: EpochDay },
): Promise<Outcome> {
  return asAccount(scope.account, async (tx) => {
    const now = await lockDiver(tx, scope, request.diver)
    const found = now?.file.record.standDowns.find(({ id }) => id === request.standDown)
    if (!now || !found) return notFound
    const { file, curriculum, evaluation } = now
    if (!(await isHeadOf(tx, scope, file.club))) return notHead
    const row = await tx.standDown.findUniqueOrThrow({ where: { id: found.id }, select: { endedAt: true } })
    if (row.endedAt) return refuse('ended before', 'It was ended before; the page shows by whom.')
    const end = endOf(found, request.freeFrom, evaluation.date.day)
    if (!end.ok) return end
    await appendLedger(tx, scope, {
      kind: 'stand-down ended',
      standDown: found.id,
      diver: file.id,
      club: file.club,
      until: formatDay(end.until),
      by: scope.account,
    })
    await tx.standDown.update({
      where: { id: found.id },
      data: { until: dateOf(end.until), endedBy: scope.account, endedAt: new Date(scope.at) },
    })
    await refreshReadiness(tx, scope, curriculum, [file.id])
    return { ok: true, id: found.id }
  })
}
