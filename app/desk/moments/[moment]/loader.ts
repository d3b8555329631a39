import { notFound } from 'next/navigation'
import type { ClipMoment } from '@/app/_components/domain/clip/clip-moment'
import type { MarksView } from '@/app/_components/domain/clip/marks/marks-view'
import type { MeasuresView } from '@/app/_components/domain/clip/measure/measures-view'
import { toClip } from '@/app/desk/loader'
import type { ChoiceGroup } from '@/app/desk/moments/_components/choices'
import { loadChoices } from '@/app/desk/moments/choices/loader'
import { listQuestionsOn, type QuestionView } from '@/app/desk/questions/loader'
import { canDecide } from '@/lib/access/can'
import { coachingScopeOf } from '@/lib/access/scope'
import { requireCoach } from '@/lib/access/session'
import type { RatedBy } from '@/lib/assessment/mark/wording'
import { dayName, pairName } from '@/lib/assessment/readiness/wording'
import { findMoment, type MomentFile } from '@/lib/assessment/store/moments'
import { dayIn } from '@/lib/assessment/time'
import { splitPairKey } from '@/lib/curriculum/edition/curriculum'
import { systemClock } from '@/lib/platform/clock'
import { viewMarks, viewMeasures } from '../loader'

export interface MomentPage {
  readonly who: string
  readonly name: string
  readonly day: string
  /** The page of the skill, where the attempts stand. */
  readonly back: string
  readonly clip: ClipMoment
  readonly marks: MarksView
  readonly measures: MeasuresView
  /** This page. */
  readonly href: string
  /** What was asked about it and still stands. */
  readonly questions: readonly QuestionView[]
  /** Other moments of the same dive. */
  readonly others: readonly ChoiceGroup[]
}

/** What was rated, to stand beside a suggestion: the coach's own rating, else for a head coach that of whoever the moment is from. */
const ratedBeside =
  ({ rated, observer, people }: MomentFile, me: string, decides: boolean) =>
  (criterion: string): RatedBy | null => {
    const own = rated.get(me)
    if (own) return { rated: own[criterion] ?? null, by: null }
    const theirs = rated.get(observer)
    return theirs && decides
      ? { rated: theirs[criterion] ?? null, by: people.get(observer)?.initials ?? 'a coach' }
      : null
  }

/** One moment of a diver of the coach's clubs; any other, and one without consent to video, is not found. */
export async function loadMoment(id: string): Promise<MomentPage> {
  const actor = await requireCoach()
  const scope = coachingScopeOf(actor, systemClock())
  const found = /^[0-9a-f-]{36}$/.test(id) ? await findMoment(scope, id) : null
  if (!found) notFound()
  const { curriculum, diver, pair, link, start, end } = found
  const who = `${diver.givenName} ${diver.familyName}`
  const name = pairName(pair, { curriculum })
  const day = dayName(found.day, { today: dayIn(scope.at, diver.zone) })
  return {
    who,
    name,
    day,
    back: `/desk/divers/${diver.id}/${encodeURIComponent(pair)}`,
    marks: viewMarks(id, found, actor.account),
    measures: viewMeasures(id, found, actor.account, ratedBeside(found, actor.account, canDecide(actor))),
    clip: toClip(link, { start, end }, `${who}, ${name}, ${day}`),
    href: `/desk/moments/${id}`,
    questions: await listQuestionsOn(scope, diver.id, found.copies),
    others: await loadChoices(scope, id, splitPairKey(pair).skill, curriculum),
  }
}
