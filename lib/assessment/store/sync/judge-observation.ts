import { type Curriculum, type Pair, pairKey } from '../../../curriculum/edition/curriculum'
import type { Rating } from '../../../curriculum/model'
import type { Place } from '../../../curriculum/place'
import { mayKeepVideo } from '../../consent'
import { checkObservation, isSilent } from '../../deck/check-observation'
import type { ObservationItem } from '../../deck/contract'
import { programmeInstant } from '../../device-clock'
import { consentRefusal, parentRefusal, refused, type SyncContext, type Taken } from './context'
import type { KeptAttempt } from './kept'

/** What an observation against which nothing stands is about. */
interface Judged {
  readonly result: 'judged'
  readonly attempt: KeptAttempt
  /** It looks at another club's attempt, by its grant. */
  readonly look: boolean
  /** Programme time. */
  readonly observedAt: number
  readonly edition: Curriculum
  readonly pair: Pair
  /** Lower bounds that "rest as expected" stands for. */
  readonly imputed: Record<string, Rating>
  /** Its moments may be kept. */
  readonly video: boolean
}

/** Whether an observation that is not kept yet may be: what it is about, or why not. */
export function judgeObservation(context: SyncContext, item: ObservationItem): Judged | Taken {
  const { kept } = context
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
  return { result: 'judged', attempt, look, observedAt, edition, pair, imputed: checked.imputed, video }
}

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
