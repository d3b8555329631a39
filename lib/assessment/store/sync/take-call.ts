import type { CallItem } from '../../deck/contract'
import { programmeInstant } from '../../device-clock'
import { digestOf } from '../../ledger/write-event'
import {
  accepted,
  consentRefusal,
  findClub,
  findPair,
  isTaken,
  type SyncContext,
  sameId,
  type Taken,
  unknownDiver,
} from './context'

/** Appends a declared call. */
export function takeCall(context: SyncContext, item: CallItem): Taken {
  const { scope, kept, added } = context
  const contentDigest = digestOf(item)
  const stored = kept.calls.find((call) => call.id === item.id)
  if (stored) {
    const before = `${stored.count} × ${stored.skill} at ${stored.place}`
    return sameId(stored, contentDigest, before, `${item.count} × ${item.skill} at ${item.place}`)
  }
  const club = findClub(context, item.diver)
  if (!club) return unknownDiver
  const stopped = consentRefusal(context, item.diver, programmeInstant(item.calledAt, context.offset))
  if (stopped) return stopped
  const pair = findPair(context, item)
  if (isTaken(pair)) return pair
  const call = {
    id: item.id,
    clubId: club,
    diverId: item.diver,
    skill: item.skill,
    place: item.place,
    atLevel: item.atLevel,
    count: item.count,
    calledAt: new Date(item.calledAt),
    receivedAt: new Date(context.receivedAt),
    coachId: scope.account,
    deviceId: item.device,
    offsetMs: context.offset,
    contentDigest,
  }
  kept.calls.push(call)
  added.calls.push(call)
  return accepted
}
