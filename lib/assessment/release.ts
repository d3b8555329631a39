import type { Pair } from '../curriculum/edition/curriculum'
import { type Refused, refuse } from './outcome'
import { raisedIn } from './raise'
import type { AttemptFact } from './record'

/** Whether a head coach may release or accept something now; the refusal is a sentence for her. */
export type ReleaseJudgement = { readonly ok: true } | { readonly ok: false; readonly refusal: Refused }

/** An attempt at a closed skill is released once, in writing; from then on it counts like any other. */
export function judgeAttemptRelease(attempt: AttemptFact, reason: string): ReleaseJudgement {
  if (!attempt.closedThen) return refuse('not flagged', 'The skill was open then: there is nothing to release.')
  if (attempt.releasedAt !== null) return refuse('released before', 'It was released before.')
  if (!reason.trim())
    return refuse('no reason', 'Say in writing why it may count although the skill was closed.', 'reason')
  return { ok: true }
}

/** Who accepts a raise, and whether the club has another head coach who could. */
export interface Acceptor {
  readonly account: string
  readonly otherHead: boolean
}

/**
 * A raised critical rating is accepted in writing, on the newest correction of it, and by another head coach than the one
 * who raised it, where the club has one.
 */
export function judgeAcceptance(
  pair: Pair,
  attempt: AttemptFact,
  observation: string,
  acceptor: Acceptor,
  reason: string,
): ReleaseJudgement {
  const raised = raisedIn(pair, attempt).find(({ view }) => view.id === observation)
  if (!raised)
    return refuse(
      'nothing raised',
      'Nothing waits there any more: it was accepted, or the rating was corrected again since.',
    )
  if (raised.view.coach === acceptor.account && acceptor.otherHead)
    return refuse('own rating', 'You raised this rating yourself: another head coach of the club accepts it.')
  if (!reason.trim())
    return refuse('no reason', 'Say in writing what you saw that makes the higher rating right.', 'reason')
  return { ok: true }
}
