import { type Pair, pairKey } from '../../../curriculum/edition/curriculum'
import type { Place } from '../../../curriculum/place'
import { keptWithoutVideo, mayKeepVideo } from '../../consent'
import { checkObservation, isSilent } from '../../deck/check-observation'
import type { ObservationItem } from '../../deck/contract'
import { programmeInstant } from '../../device-clock'
import { digestOf } from '../../ledger/write-event'
import { isWithinScope } from '../coach-scope'
import { momentRow } from '../moment-row'
import { makeWords } from '../words'
import { accepted, consentRefusal, parentRefusal, refused, type SyncContext, sameId, type Taken } from './context'

/** Appends what a coach saw of an attempt, or the correction of it. */
export function takeObservation(context: SyncContext, item: ObservationItem): Taken {
  const { scope, kept, added } = context
  const contentDigest = digestOf(item)
  const stored = kept.observations.get(item.id)
  if (stored) {
    const taken = sameId(stored, contentDigest, JSON.stringify(stored.ratings), JSON.stringify(item.ratings))
    return taken.result === 'known' && stored.momentCount < item.moments.length ? withoutMoments('known', item) : taken
  }
  const parent = parentRefusal(context, item.attempt, 'attempt')
  if (parent) return parent
  const attempt = kept.attempts.get(item.attempt)
  const look = attempt !== undefined && context.looks.has(attempt.id) && item.observedOn === 'video'
  if (!attempt || !(look || context.divers.has(attempt.diverId)))
    return refused('unknown attempt', 'the attempt it belongs to is not known here: send the attempt first', 'attempt')
  // A correction puts right what stands already: it is taken whatever became of the consent since.
  const observedAt = programmeInstant(item.observedAt, context.offset)
  const stopped = item.supersedes ? null : consentRefusal(context, attempt.diverId, observedAt)
  if (stopped) return stopped
  const edition = kept.editions.get(item.edition) ?? null
  if (edition === null || edition === 'draft') return editionRefusal(edition)
  const pair = edition.pairs.get(pairKey({ skill: attempt.skill, place: attempt.place as Place }))
  if (!pair) return refused('unknown skill', `that edition does not teach ${attempt.skill} there`, 'edition')
  const level = edition.levelIndex(attempt.atLevel)
  const checked = checkObservation(edition, pair, level, item)
  if (!checked.ok) return { result: 'refused', refusal: checked.refusal }
  const conflict = supersedingRefusal(item, kept.heads.get(attempt.id) ?? null)
  if (conflict) return conflict
  const video = mayKeepVideo(context.consentsOf(attempt.diverId))
  if (!video && isSilent({ ...item, moments: [] }))
    return refused('no consent', 'no consent to video of this diver is in force, and nothing else was rated', 'moments')
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
    imputed: checked.imputed,
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

const editionRefusal = (found: 'draft' | null): Taken =>
  found === 'draft'
    ? refused(
        'unpublished edition',
        'it was rated against a draft of the curriculum: only a published edition counts',
        'edition',
      )
    : refused('unknown edition', 'the programme has published no edition of that name: open the deck again', 'edition')

function supersedingRefusal(item: ObservationItem, inForce: string | null): Taken | null {
  if (!item.supersedes)
    return inForce === null
      ? null
      : refused(
          'already rated',
          'you have already rated this attempt: correct that rating instead, and say why',
          'attempt',
        )
  if (inForce === null)
    return refused('not yours to supersede', 'only the coach who made an observation can correct it', 'supersedes.id')
  return inForce === item.supersedes.id
    ? null
    : refused('already superseded', 'this rating was corrected before: correct the newest one', 'supersedes.id')
}
