import type { ClipMoment } from '@/app/_components/domain/clip/clip-moment'
import { toClip } from '@/app/desk/loader'
import { type QuestionView, toQuestion } from '@/app/desk/questions/loader'
import type { EvidenceMoment } from '@/lib/assessment/evidence'
import { isUnreachable, verdictOf } from '@/lib/assessment/moment-check'
import { effectiveObservations } from '@/lib/assessment/observation'
import { dayName, pairName, stepName } from '@/lib/assessment/readiness/wording'
import type { DiverMoment } from '@/lib/assessment/store/reads'
import { dayIn } from '@/lib/assessment/time'
import { expectedAt } from '@/lib/assessment/verdict'
import { phaseSets, type Rating } from '@/lib/curriculum/model'
import { loadStep } from '../loader'

/** What one coach gave one criterion; null where she did not rate it. */
export interface RatingCell {
  readonly rating: Rating
  readonly imputed: boolean
  readonly short: boolean
}

/** Who rated the dive what, by phase: a column a coach. */
export interface RatingsView {
  readonly coaches: readonly {
    readonly id: string
    readonly initials: string
    readonly name: string
    readonly how: 'deck' | 'video'
  }[]
  readonly phases: readonly {
    readonly phase: string
    readonly criteria: readonly {
      readonly key: string
      readonly title: string
      readonly critical: boolean
      readonly asked: Rating
      readonly cells: readonly (RatingCell | null)[]
    }[]
  }[]
}

/** One moment of the evidence, with what stands of it. */
export interface MomentView {
  readonly id: string
  readonly at: number
  readonly of: number
  readonly name: string
  readonly day: string
  readonly clip: ClipMoment
  /** What the reader made of it, and when. */
  readonly verdict: { readonly kind: 'accepted' | 'questioned'; readonly day: string } | null
  readonly unreachable: boolean
  readonly ratings: RatingsView
  readonly questions: readonly QuestionView[]
  readonly before: string | null
  readonly next: string
}

export interface ReviewPage {
  readonly diver: string
  readonly step: string
  /** The decision that it is about. */
  readonly decision: string
  /** Null where nothing of the evidence is on video. */
  readonly moment: MomentView | null
}

type Step = Awaited<ReturnType<typeof loadStep>>
type Shown = EvidenceMoment<DiverMoment>

function toRatings({ desk, evaluation }: Step, { pair, attempt }: Shown): RatingsView {
  const level = evaluation.holdings.of(pair.key).by?.level ?? pair.level
  const views = effectiveObservations(attempt.fact.observations)
  const cell = (view: (typeof views)[number], key: string, asked: Rating): RatingCell | null => {
    const rating = view.ratings[key] ?? view.imputed[key]
    const imputed = view.ratings[key] === undefined
    return rating === undefined ? null : { rating, imputed, short: !imputed && rating < asked }
  }
  return {
    coaches: views.map(({ id, coach, observedOn }) => ({
      id,
      initials: desk.people.get(coach)?.initials ?? '?',
      name: desk.people.get(coach)?.name ?? 'a coach',
      how: observedOn,
    })),
    phases: phaseSets[pair.skill.phaseSet]
      .map((phase) => ({
        phase,
        criteria: pair.criteria
          .filter(({ criterion }) => criterion.phase === phase)
          .map((attached) => {
            const { key, title, critical } = attached.criterion
            const asked = expectedAt(attached, level)
            return { key, title, critical, asked, cells: views.map((view) => cell(view, key, asked)) }
          }),
      }))
      .filter(({ criteria }) => criteria.length > 0),
  }
}

function toMoment(step: Step, at: number): MomentView | null {
  const { evidence, asking, words, href } = step
  const shown = evidence[at]
  if (!shown) return null
  const { pair, attempt, moment } = shown
  const { checks } = step.desk.questions
  const pageOf = (index: number) => evidence[index] && `${href}/evidence?moment=${evidence[index].moment.id}`
  const verdict = verdictOf(checks, moment.id, asking.reader)
  const [name, day] = [pairName(pair.key, words), dayName(attempt.fact.day, words)]
  const range = { start: moment.startMs / 1000, end: moment.endMs === null ? null : moment.endMs / 1000 }
  return {
    id: moment.id,
    at: at + 1,
    of: evidence.length,
    name,
    day,
    clip: toClip(moment.link, range, `${words.diver}, ${name}, ${day}`),
    verdict: verdict && {
      kind: verdict.kind === 'accepted' ? 'accepted' : 'questioned',
      day: dayName(dayIn(verdict.at, asking.zone), words),
    },
    unreachable: isUnreachable(checks, moment.id),
    ratings: toRatings(step, shown),
    questions: asking.standing
      .filter(({ asked }) => asked.moment === moment.id)
      .map((question) => toQuestion(asking, question)),
    before: pageOf(at - 1) ?? null,
    next: pageOf(at + 1) ?? `${href}?done=evidence`,
  }
}

/** One moment of a step's evidence: the one named, else the first of which she has said nothing yet, else the first. */
export async function loadReview(diver: string, target: string, wanted: string | undefined): Promise<ReviewPage> {
  const step = await loadStep(diver, target)
  const { desk, evidence, asking, words, href, found } = step
  const named = evidence.findIndex(({ moment }) => moment.id === wanted)
  const fresh = evidence.findIndex(({ moment }) => !verdictOf(desk.questions.checks, moment.id, asking.reader))
  return {
    diver: `${desk.file.givenName} ${desk.file.familyName}`,
    step: stepName(found.target, words),
    decision: href,
    moment: toMoment(step, named >= 0 ? named : Math.max(fresh, 0)),
  }
}
