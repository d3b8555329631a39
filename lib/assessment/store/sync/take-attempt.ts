import { keptUnfilmed, mayKeepVideo } from '../../consent'
import type { AttemptItem, FilmedItem } from '../../deck/contract'
import { isFutureDated, programmeInstant } from '../../device-clock'
import { digestOf } from '../../ledger/write-event'
import { isClosed } from '../../open'
import { dayIn } from '../../time'
import {
  accepted,
  consentRefusal,
  findClub,
  findPair,
  isTaken,
  parentRefusal,
  refused,
  type SyncContext,
  sameId,
  type Taken,
  unknownDiver,
} from './context'
import { type Kept, type KeptCall, numberIn } from './kept'

type FilmedOf = { readonly id: string; readonly clubId: string; readonly diverId: string; readonly coachId: string }

/** Appends a dive. What makes it uncalled, future-dated or beyond an open skill is kept as a flag; nothing is lost. */
export function takeAttempt(context: SyncContext, item: AttemptItem): Taken {
  const { scope, kept, added, receivedAt, offset } = context
  const contentDigest = digestOf(item)
  const stored = kept.attempts.get(item.id)
  if (stored) {
    const before = `${stored.skill} at ${stored.place}, ${stored.attemptedAt.toISOString()}`
    const taken = sameId(
      stored,
      contentDigest,
      before,
      `${item.skill} at ${item.place}, ${new Date(item.attemptedAt).toISOString()}`,
    )
    return taken.result === 'known' && item.filmed && !kept.filmed.has(item.id) ? unfilmed('known') : taken
  }
  if (item.call) {
    const parent = parentRefusal(context, item.call.id, 'call.id')
    if (parent) return parent
  }
  const club = findClub(context, item.diver)
  if (!club) return unknownDiver
  const attemptedAt = programmeInstant(item.attemptedAt, offset)
  const stopped = consentRefusal(context, item.diver, attemptedAt)
  if (stopped) return stopped
  const pair = findPair(context, item)
  if (isTaken(pair)) return pair
  const call = kept.calls.find((one) => one.id === item.call?.id && one.clubId === club) ?? null
  if (item.call && !call)
    return refused('unknown call', 'the call it belongs to is not known here: send the call first', 'call.id')
  if (item.call && call && (call.diverId !== item.diver || call.skill !== item.skill || call.place !== item.place))
    return refused('other call', 'its call was declared for another diver or skill', 'call.id')
  const flags = call ? callFlags(kept, item, call) : []
  if (isFutureDated(attemptedAt, receivedAt)) flags.push('future-dated')
  const day = dayIn(attemptedAt, context.zoneOf(club))
  const evaluation = context.evaluationOn(item.diver, day, attemptedAt)
  const attempt = {
    id: item.id,
    clubId: club,
    diverId: item.diver,
    skill: item.skill,
    place: item.place,
    atLevel: item.atLevel,
    callId: call?.id ?? null,
    callNumber: item.call?.number ?? null,
    called: call !== null && !flags.some((flag) => flag.startsWith('call: ')),
    attemptedAt: new Date(item.attemptedAt),
    offsetMs: offset,
    receivedAt: new Date(receivedAt),
    coachId: scope.account,
    deviceId: item.device,
    setting: item.setting,
    cued: item.cued,
    closedThen: evaluation !== null && isClosed(evaluation, pair.key),
    flags,
    contentDigest,
  }
  kept.attempts.set(attempt.id, attempt)
  if (call && item.call) kept.numbers.add(numberIn(club, call.id, item.call.number))
  added.attempts.push(attempt)
  return item.filmed ? takeFilmed(context, attempt, item.filmed) : accepted
}

const unfilmed = (result: 'accepted' | 'known'): Taken => ({
  result,
  keptWithout: { moments: [], message: keptUnfilmed },
})

/** Marks a kept attempt as filmed; without a consent to video the attempt stays and the mark does not. */
function takeFilmed(context: SyncContext, attempt: FilmedOf, { clip, at }: FilmedItem): Taken {
  const { kept, added, offset, receivedAt } = context
  if (!mayKeepVideo(context.consentsOf(attempt.diverId))) return unfilmed('accepted')
  kept.filmed.add(attempt.id)
  const { id: attemptId, clubId, diverId, coachId } = attempt
  added.filmed.push({
    ...{ attemptId, clubId, diverId, coachId, clip },
    filmedAt: new Date(at),
    offsetMs: offset,
    receivedAt: new Date(receivedAt),
  })
  return accepted
}

/** Why a dive with a call is kept as uncalled all the same. */
function callFlags(kept: Kept, item: AttemptItem, call: KeptCall): string[] {
  const flags: string[] = []
  if (item.device !== call.deviceId) flags.push('call: other device')
  else if (item.attemptedAt < call.calledAt.getTime()) flags.push('call: dived before it was called')
  const number = item.call?.number ?? 0
  if (number > call.count) flags.push('call: beyond the number called')
  if (kept.numbers.has(numberIn(call.clubId, call.id, number))) flags.push('call: number already taken')
  return flags
}
