import type { Pair } from '../curriculum/edition/curriculum'
import type { PairHistory } from './history'
import { effectiveObservations, momentsOf } from './observation'
import { type Refused, refuse } from './outcome'
import type { AttemptFact } from './record'
import { standardOf } from './standard'

/** Whether an attempt may be granted to a coach of another club; the refusal is a sentence for the head coach. */
export type GrantJudgement = { readonly ok: true } | { readonly ok: false; readonly refusal: Refused }

/** What a grant is judged on. */
export interface GrantCase {
  readonly attempt: AttemptFact
  /** The programme lets coaches look across clubs. */
  readonly open: boolean
  /** A consent to video of the diver is in force. */
  readonly video: boolean
  /** The coach coaches in another club of the programme, and in none of the diver's. */
  readonly fromElsewhere: boolean
  /** It is granted to her already. */
  readonly granted: boolean
  readonly coach: string
}

/** An attempt is granted for one blind look on video: where the programme and the consent allow it, and there is something to see. */
export function judgeGrant({ attempt, open, video, fromElsewhere, granted, coach }: GrantCase): GrantJudgement {
  if (!open) return refuse('not open', 'The programme has not opened looking across clubs: ask the programme lead.')
  if (!video) return refuse('no consent', 'No consent to video of this diver is in force: record it first.')
  if (!attempt.observations.some((view) => momentsOf(view) > 0))
    return refuse('no video', 'There is no video moment of this attempt: link one on the deck first.', 'attempt')
  if (!fromElsewhere) return refuse('not elsewhere', 'Choose a coach of another club of the programme.', 'coach')
  if (attempt.observations.some((one) => one.coach === coach))
    return refuse('seen before', 'This coach has rated the attempt already.', 'coach')
  return granted ? refuse('granted before', 'It is granted to this coach already.', 'coach') : { ok: true }
}

/**
 * The attempts at a pair that a second coach of the club could look at: called, in the window, with a moment on video, seen
 * by one other coach, where the standard still wants another. All of them, good or not: the choice must tell nothing of the
 * first coach's ratings.
 */
export function wantedLooks(pair: Pair, history: PairHistory, account: string): AttemptFact[] {
  if (pair.standard.coaches < 2 || standardOf(history, pair.level).shortage.coaches === 0) return []
  return history.attempts
    .map(({ fact }) => fact)
    .filter((fact) => fact.called && fact.day > history.date.day - pair.standard.withinDays)
    .filter((fact) => {
      const views = effectiveObservations(fact.observations)
      return views.some((view) => momentsOf(view) > 0) && views.length === 1 && views[0]?.coach !== account
    })
}
