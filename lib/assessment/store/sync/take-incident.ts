import type { IncidentItem } from '../../deck/contract'
import { digestOf } from '../../ledger/write-event'
import { appendIncident } from '../incident'
import { accepted, findClub, refused, type SyncContext, sameId, type Taken } from './context'

/**
 * Appends an incident. What is dangerous counts at once: neither an unknown skill, nor a closed one, nor an attempt that
 * was refused, nor a withdrawn consent holds it back. It pauses what comes after it in the same batch.
 */
export async function takeIncident(context: SyncContext, item: IncidentItem): Promise<Taken> {
  const { tx, scope, kept } = context
  const contentDigest = digestOf(item)
  const stored = kept.incidents.get(item.id)
  if (stored) {
    const before = `${stored.kind}, ${stored.skill} at ${stored.place}`
    return sameId(stored, contentDigest, before, `${item.what}, ${item.skill} at ${item.place}`)
  }
  const club = findClub(context, item.diver)
  if (!club)
    return refused(
      'unknown diver',
      'no diver of your clubs has this id: perhaps the diver has moved to another club. It stays on this phone: tell the head coach there now',
      'diver',
    )
  const attempt = item.attempt ? kept.attempts.get(item.attempt) : undefined
  const fact = await appendIncident(tx, scope, {
    ...item,
    club,
    attempt: attempt?.diverId === item.diver ? attempt.id : null,
    offset: context.offset,
    contentDigest,
  })
  kept.incidents.set(item.id, { id: item.id, kind: item.what, skill: item.skill, place: item.place, contentDigest })
  context.noteIncident(item.diver, fact)
  return accepted
}
