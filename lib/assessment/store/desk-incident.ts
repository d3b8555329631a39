import { v7 as uuidv7 } from 'uuid'
import type { Scope } from '../../access/scope'
import type { PairKey } from '../../curriculum/edition/curriculum'
import { asAccount } from '../../platform/db'
import { type ReleaseWords, refuseRelease } from '../incident'
import { digestOf } from '../ledger/write-event'
import { type Outcome, refuse } from '../outcome'
import type { IncidentKind } from '../record'
import { lockDiver, notFound } from './desk'
import { isHeadOf } from './head-coaches'
import { appendIncident } from './incident'
import { appendLedger } from './ledger'
import { refreshReadiness } from './readiness'
import { keepWords } from './words'

export interface DeskIncident {
  readonly diver: string
  readonly pair: PairKey
  readonly what: IncidentKind
  readonly note: string
  /** When it happened, from the clocks of her club: `at` answers the instant in the club's zone. */
  readonly at: (zone: string) => number
}

/** Records an incident at the desk: it pauses at once, as one from the deck does. For any coach of the diver's club. */
export function recordIncident(scope: Scope, request: DeskIncident): Promise<Outcome> {
  return asAccount(scope.account, async (tx) => {
    const now = await lockDiver(tx, scope, request.diver)
    if (!now) return notFound
    const { file, curriculum } = now
    const pair = curriculum.pairs.get(request.pair)
    if (!pair) return refuse('unknown', 'Choose the skill and the place at which it happened.', 'pair')
    const happenedAt = request.at(file.zone)
    if (happenedAt > scope.at) return refuse('not yet', 'That time has not come: say when it happened.', 'time')
    const seen = {
      id: uuidv7({ msecs: scope.at }),
      diver: file.id,
      club: file.club,
      ...pair.holding,
      what: request.what,
      attempt: null,
      note: request.note,
      happenedAt,
      offset: 0,
    }
    await appendIncident(tx, scope, { ...seen, contentDigest: digestOf(seen) })
    await refreshReadiness(tx, scope, curriculum, [file.id])
    return { ok: true, id: seen.id }
  })
}

/** Clears an incident in writing, once. For the diver's head coach; after a knock to the head, with a statement. */
export function releaseIncident(
  scope: Scope,
  request: ReleaseWords & { readonly diver: string; readonly incident: string },
): Promise<Outcome> {
  return asAccount(scope.account, async (tx) => {
    const now = await lockDiver(tx, scope, request.diver)
    const incident = now?.file.record.incidents.find(({ id }) => id === request.incident)
    if (!now || !incident) return notFound
    const { file, curriculum } = now
    if (!(await isHeadOf(tx, scope, file.club)))
      return refuse('not the head coach', 'Only the diver’s head coach clears an incident.')
    const refusal = refuseRelease(incident, request)
    if (refusal) return { ok: false, refusal }
    const about = { club: file.club, diver: file.id, writtenBy: scope.account }
    const reason = await keepWords(tx, about, request.reason.trim())
    const statement = request.statement.trim()
    const stated = statement ? await keepWords(tx, { ...about, readers: 'head' }, statement) : null
    const id = uuidv7({ msecs: scope.at })
    const ledgerSeq = await appendLedger(tx, scope, {
      kind: 'incident released',
      release: id,
      incident: incident.id,
      diver: file.id,
      club: file.club,
      by: scope.account,
      reason: reason.commitment,
      adviceFollowed: stated !== null,
    })
    await tx.release.create({
      data: {
        id,
        clubId: file.club,
        diverId: file.id,
        kind: 'incident',
        subjectId: incident.id,
        by: scope.account,
        at: new Date(scope.at),
        reasonId: reason.id,
        statementId: stated?.id ?? null,
        ledgerSeq,
      },
    })
    await refreshReadiness(tx, scope, curriculum, [file.id])
    return { ok: true, id }
  })
}
