import { notFound } from 'next/navigation'
import type { ClipMoment } from '@/app/_components/domain/clip/clip-moment'
import type { Marker, MarksView } from '@/app/_components/domain/clip/marks/marks-view'
import type { MeasuresView } from '@/app/_components/domain/clip/measure/measures-view'
import { toClip } from '@/app/desk/loader'
import { listQuestionsOn, type QuestionView } from '@/app/desk/questions/loader'
import { coachingScopeOf } from '@/lib/access/scope'
import { requireCoach } from '@/lib/access/session'
import { markTable } from '@/lib/assessment/mark/apart'
import { markKeysOf } from '@/lib/assessment/mark/mark'
import { oddities } from '@/lib/assessment/mark/odd'
import { sayOddity } from '@/lib/assessment/mark/wording'
import { dayName, pairName } from '@/lib/assessment/readiness/wording'
import { findMoment, type MomentFile } from '@/lib/assessment/store/moments'
import { dayIn } from '@/lib/assessment/time'
import { systemClock } from '@/lib/platform/clock'

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
}

const markerOf = ({ people }: MomentFile, id: string): Marker => ({
  id,
  name: people.get(id)?.name ?? 'A coach',
  initials: people.get(id)?.initials ?? '?',
})

/** The measures of a moment; whose they are decides who may take them back. */
const toMeasures = (moment: string, file: MomentFile, me: string): MeasuresView => ({
  moment,
  board: file.board,
  saved: file.measures.map(({ id, coach, taken, results }) => ({
    id,
    coach: markerOf(file, coach),
    own: coach === me,
    taken,
    results,
    suggests: [],
  })),
})

/** The marks of a moment as one of its coaches sees them: her own, and everybody's beside each other, hers first. */
function toMarks(moment: string, file: MomentFile, me: string): MarksView {
  const { curriculum, pair, start, end, marks } = file
  const set = curriculum.pairs.get(pair)?.skill.phaseSet
  const keys = set ? markKeysOf(set) : []
  const own = marks.filter(({ coach }) => coach === me)
  const coaches = [...new Set(marks.map(({ coach }) => coach))].sort((a, b) => Number(b === me) - Number(a === me))
  const range = { startMs: start * 1000, endMs: end === null ? null : end * 1000 }
  return {
    moment,
    keys,
    own,
    odd: oddities(own, keys, range).map(sayOddity),
    coaches: coaches.map((id) => markerOf(file, id)),
    lines: markTable(marks, keys, coaches),
  }
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
    marks: toMarks(id, found, actor.account),
    measures: toMeasures(id, found, actor.account),
    clip: toClip(link, { start, end }, `${who}, ${name}, ${day}`),
    href: `/desk/moments/${id}`,
    questions: await listQuestionsOn(scope, diver.id, id),
  }
}
