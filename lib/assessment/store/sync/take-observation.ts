import type { Pair } from '../../../curriculum/edition/curriculum'
import { keptWithoutVideo } from '../../consent'
import type { ObservationItem } from '../../deck/contract'
import { programmeInstant } from '../../device-clock'
import { digestOf } from '../../ledger/write-event'
import { isWithinScope } from '../coach-scope'
import { momentRow } from '../moment-row'
import { makeWords } from '../words'
import { accepted, type SyncContext, sameId, type Taken } from './context'
import { judgeObservation } from './judge-observation'

/** Appends what a coach saw of an attempt, or the correction of it. */
export function takeObservation(context: SyncContext, item: ObservationItem): Taken {
  const { scope, kept, added } = context
  const contentDigest = digestOf(item)
  const stored = kept.observations.get(item.id)
  if (stored) {
    const taken = sameId(stored, contentDigest, JSON.stringify(stored.ratings), JSON.stringify(item.ratings))
    return taken.result === 'known' && stored.momentCount < item.moments.length ? withoutMoments('known', item) : taken
  }
  const judged = judgeObservation(context, item)
  if (judged.result !== 'judged') return judged
  const { attempt, look, observedAt, edition, pair, video } = judged
  const about = { club: attempt.clubId, diver: attempt.diverId, writtenBy: scope.account }
  const note = item.note ? makeWords(about, item.note) : null
  const reason = item.supersedes ? makeWords(about, item.supersedes.reason) : null
  const moments = video ? item.moments.map(momentRow) : []
  // On deck a coach judges when the attempt is dived, on video when she looks at it.
  const attemptedAt = programmeInstant(attempt.attemptedAt.getTime(), Number(attempt.offsetMs))
  const judgedAt = item.observedOn === 'video' ? observedAt : attemptedAt
  const observation = {
    id: item.id,
    clubId: attempt.clubId,
    attemptId: attempt.id,
    diverId: attempt.diverId,
    coachId: scope.account,
    editionHash: edition.hash,
    observedOn: item.observedOn,
    observedAt: new Date(item.observedAt),
    receivedAt: new Date(context.receivedAt),
    ratings: item.ratings,
    imputed: judged.imputed,
    restAsExpected: item.restAsExpected,
    faults: item.faults,
    withinScope: mayJudge(context, look ? null : attempt.clubId, pair, judgedAt),
    momentCount: moments.length,
    noteId: note?.id ?? null,
    supersedesId: item.supersedes?.id ?? null,
    reasonId: reason?.id ?? null,
    digest: digestOf({
      ...item,
      note: note?.commitment ?? null,
      supersedes: item.supersedes ? { id: item.supersedes.id, reason: reason?.commitment ?? null } : null,
      moments: moments.map((moment) => moment.commitment),
      coach: scope.account,
    }),
    contentDigest,
  }
  kept.observations.set(observation.id, observation)
  kept.heads.set(attempt.id, observation.id)
  added.words.push(...[note, reason].flatMap((words) => words ?? []))
  added.observations.push(observation)
  for (const moment of moments)
    added.moments.push({ ...moment, clubId: about.club, diverId: about.diver, observationId: item.id })
  return moments.length < item.moments.length ? withoutMoments('accepted', item) : accepted
}

/** Within her scope in the club; of a granted attempt of another club, in any club in which she coaches herself. */
const mayJudge = ({ coachScopes, scope }: SyncContext, club: string | null, pair: Pair, at: number): boolean =>
  (club === null ? (scope.clubs ?? []) : [club]).some((one) => isWithinScope(coachScopes, one, pair, at))

const withoutMoments = (result: 'accepted' | 'known', { moments }: ObservationItem): Taken => ({
  result,
  keptWithout: { moments: moments.map(({ id }) => id), message: keptWithoutVideo },
})
