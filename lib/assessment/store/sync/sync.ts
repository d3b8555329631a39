import type { Scope } from '../../../access/scope'
import { getEditionInForce } from '../../../curriculum/store/editions'
import { asAccount, databaseCode, type Tx } from '../../../platform/db'
import { type DeckItem, type ItemAnswer, itemSchema } from '../../deck/contract'
import { refusal } from '../../deck/refusal'
import { pausedAsAt } from '../../incident'
import { type Evaluation, evaluationOf } from '../../readiness/evaluation'
import type { IncidentFact } from '../../record'
import { listConsents } from '../consents'
import { lockDivers } from '../lock'
import { refreshReadiness } from '../readiness'
import { listDiverFiles } from '../records'
import type { SyncContext, Taken } from './context'
import { takeAttempt } from './take-attempt'
import { takeCall } from './take-call'
import { takeIncident } from './take-incident'
import { takeObservation } from './take-observation'

/**
 * Takes a batch from a deck in: one transaction, a savepoint for each item, in order, an answer for each.
 * `scope` is a coaching scope; `sentAt` is the device's clock when it sent. What is answered "accepted" or "known"
 * can be read back; what is refused left nothing behind.
 */
export function syncDeck(scope: Scope, sentAt: number, items: readonly unknown[]): Promise<ItemAnswer[]> {
  return asAccount(
    scope.account,
    async (tx) => {
      const parsed = items.map(parseItem)
      const context = await openContext(
        tx,
        scope,
        sentAt,
        parsed.flatMap((entry) => (entry.item ? [entry.item] : [])),
      )
      const answers: ItemAnswer[] = []
      const changed = new Set<string>()
      for (const entry of parsed) {
        const taken: Taken = entry.item
          ? await takeItem(context, entry.item)
          : { result: 'refused', refusal: entry.refusal }
        if (taken.result === 'refused') context.refused.set(entry.id, taken.refusal)
        else if (taken.result === 'accepted' && entry.item) changed.add(await diverOf(tx, entry.item))
        answers.push({
          id: entry.id,
          ...(taken.result === 'refused' ? { result: 'refused', ...taken.refusal } : taken),
        })
      }
      await refreshReadiness(tx, scope, context.curriculum, [...changed])
      return answers
    },
    { timeout: 60_000 },
  )
}

type Parsed = { id: string; item: DeckItem } | { id: string; item: null; refusal: ReturnType<typeof refusal> }

/** An item by itself: a malformed one is refused at its field and holds back no other. */
function parseItem(raw: unknown, index: number): Parsed {
  const given = typeof raw === 'object' && raw !== null && 'id' in raw ? raw.id : null
  const id = typeof given === 'string' ? given.slice(0, 64) : `item ${index + 1}`
  const result = itemSchema.safeParse(raw)
  if (result.success) return { id: result.data.id, item: result.data }
  const issue = result.error.issues[0]
  return {
    id,
    item: null,
    refusal: refusal('malformed', issue?.message ?? 'not an item', issue?.path.join('.') || 'item'),
  }
}

/** One item inside its savepoint. Two devices may send the same item at once: the second finds it on its second look. */
async function takeItem(context: SyncContext, item: DeckItem, again = true): Promise<Taken> {
  await context.tx.$executeRaw`SAVEPOINT item`
  try {
    const taken = await append(context, item)
    await context.tx.$executeRaw`RELEASE SAVEPOINT item`
    return taken
  } catch (error) {
    await context.tx.$executeRaw`ROLLBACK TO SAVEPOINT item`
    if (again && databaseCode(error) === 'P2002') return takeItem(context, item, false)
    throw error
  }
}

function append(context: SyncContext, item: DeckItem): Promise<Taken> {
  switch (item.kind) {
    case 'call':
      return takeCall(context, item)
    case 'attempt':
      return takeAttempt(context, item)
    case 'observation':
      return takeObservation(context, item)
    case 'incident':
      return takeIncident(context, item)
  }
}

async function diverOf(tx: Tx, item: DeckItem): Promise<string> {
  if (item.kind !== 'observation') return item.diver
  return (await tx.attempt.findFirstOrThrow({ where: { id: item.attempt }, select: { diverId: true } })).diverId
}

async function openContext(tx: Tx, scope: Scope, sentAt: number, items: readonly DeckItem[]): Promise<SyncContext> {
  const at = new Date(scope.at)
  const memberships = await tx.diverMembership.findMany({
    where: { clubId: { in: [...(scope.clubs ?? [])] }, from: { lte: at }, OR: [{ to: null }, { to: { gt: at } }] },
  })
  const attempts = items.flatMap((item) => (item.kind === 'observation' ? [item.attempt] : []))
  const rated = await tx.attempt.findMany({ where: { id: { in: attempts } }, select: { diverId: true } })
  const named = items.flatMap((item) => (item.kind === 'observation' ? [] : [item.diver]))
  await lockDivers(tx, [...named, ...rated.map((row) => row.diverId)])
  const clubs = await tx.club.findMany({ where: { programmeId: scope.programme } })
  const curriculum = await getEditionInForce(tx, scope)
  const incidents: { readonly diver: string; readonly fact: IncidentFact }[] = []
  const evaluations = new Map<string, Evaluation>()
  const files = new Map((await listDiverFiles(tx, scope, [...new Set(named)])).map((file) => [file.id, file]))
  return {
    tx,
    scope,
    receivedAt: scope.at,
    offset: scope.at - sentAt,
    curriculum,
    divers: new Map(memberships.map((membership) => [membership.diverId, membership])),
    coachScopes: await tx.coachScope.findMany({ where: { accountId: scope.account }, orderBy: { setAt: 'asc' } }),
    zoneOf: (club) => clubs.find((candidate) => candidate.id === club)?.zone ?? scope.zone,
    consentsOf: await listConsents(tx, [...named, ...rated.map((row) => row.diverId)]),
    noteIncident: (diver, fact) => incidents.push({ diver, fact }),
    evaluationOn: async (diver, day, at) => {
      const file = files.get(diver)
      if (!file) return null
      const fresh = incidents.flatMap((one) => (one.diver === diver ? [one.fact] : []))
      const record = pausedAsAt({ ...file.record, incidents: [...file.record.incidents, ...fresh] }, at)
      const key = [diver, day, ...record.incidents.map(({ id }) => id)].join(' ')
      const found = evaluations.get(key)
      if (found) return found
      const evaluation = evaluationOf(curriculum, record, { day, instant: scope.at })
      evaluations.set(key, evaluation)
      return evaluation
    },
    refused: new Map(),
  }
}
