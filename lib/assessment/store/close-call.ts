import { v7 as uuidv7 } from 'uuid'
import type { Scope } from '../../access/scope'
import { asAccount } from '../../platform/db'
import { type Outcome, refuse } from '../outcome'
import { lockDiver } from './desk'
import { isHeadOf } from './head-coaches'
import { keepWords } from './words'

/** Closes a call early, in writing: by the coach who called, or the head coach. What was dived and rated stays. */
export function closeCall(scope: Scope, request: { call: string; reason: string }): Promise<Outcome> {
  return asAccount(scope.account, async (tx) => {
    const call = await tx.call.findFirst({ where: { id: request.call } })
    const now = call ? await lockDiver(tx, scope, call.diverId) : null
    if (!call || !now)
      return refuse('not found', 'No call for your divers is found there. The diver may have moved to another club.')
    if (call.coachId !== scope.account && !(await isHeadOf(tx, scope, now.file.club)))
      return refuse('not yours', 'The coach who called these attempts closes them, or the head coach.')
    if ((await tx.callClosure.count({ where: { callId: call.id } })) > 0)
      return refuse('closed before', 'It was closed before.')
    if (!request.reason.trim())
      return refuse('no reason', 'Say in writing why the others were not dived or not rated.', 'reason')
    const about = { club: now.file.club, diver: now.file.id, writtenBy: scope.account }
    const reason = await keepWords(tx, about, request.reason.trim())
    const id = uuidv7({ msecs: scope.at })
    await tx.callClosure.create({
      data: {
        id,
        // The call's own club: the two together are its key.
        clubId: call.clubId,
        diverId: call.diverId,
        callId: call.id,
        by: scope.account,
        at: new Date(scope.at),
        reasonId: reason.id,
      },
    })
    return { ok: true, id }
  })
}
