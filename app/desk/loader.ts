import type { ClipMoment } from '@/app/_components/domain/clip/clip-moment'
import { type ArcSubject, arcSubject } from '@/lib/assessment/arc-subject'
import type { SeenAttempt } from '@/lib/assessment/attempt'
import { isMediaFile, momentUrl, ownFilm, type TimeRange } from '@/lib/assessment/moment'
import type { Evaluation } from '@/lib/assessment/readiness/evaluation'
import { dayInTable, type Words } from '@/lib/assessment/readiness/wording'
import type { DiverMoment, Person } from '@/lib/assessment/store/reads'
import { verdictAt } from '@/lib/assessment/verdict'
import type { Pair } from '@/lib/curriculum/edition/curriculum'

/** One attempt as a line of a log: when, by whom, how, and its phases against the notch. */
export interface AttemptLine {
  readonly id: string
  readonly day: string
  readonly coaches: string
  readonly how: 'deck' | 'video' | 'deck and video'
  readonly called: boolean
  readonly verdict: 'success' | 'failure' | 'incomplete'
  readonly arc: ArcSubject
  /** `at`: where it begins. */
  readonly moments: readonly {
    readonly id: string
    readonly href: string
    readonly at: string
    readonly range: string
  }[]
}

interface LineContext {
  readonly evaluation: Evaluation
  readonly words: Words
  readonly people: ReadonlyMap<string, Person>
  readonly moments: readonly DiverMoment[]
}

const say = (seconds: number): string => `${seconds.toFixed(1)} s`

/** A range of a film in words; `end` null plays to its end. Seconds. */
export const rangeWords = (start: number, end: number | null): string =>
  end === null ? `from ${say(start)}` : `${say(start)} to ${say(end)}`

/** A moment as the player takes it: played here when its link is a film, opened where it is when it is not. */
export const toClip = (link: string, { start, end }: TimeRange, title: string): ClipMoment => ({
  href: momentUrl(link, { start, end }),
  file: isMediaFile(link) ? link : null,
  host: ownFilm.test(link) ? null : new URL(link).host,
  start,
  end,
  range: rangeWords(start, end),
  title,
})

/** The attempts at a pair, newest first, as lines of a log judged at a level index. */
export function toLines(
  context: LineContext,
  pair: Pair,
  attempts: readonly SeenAttempt[],
  level: number,
): AttemptLine[] {
  const { evaluation, words, people } = context
  return [...attempts].reverse().map((attempt) => {
    const seen = attempt.fact.observations
    const how = [...new Set(seen.map((one) => one.observedOn))].sort().join(' and ') as AttemptLine['how']
    return {
      id: attempt.fact.id,
      day: dayInTable(attempt.fact.day, words),
      coaches: [...new Set(seen.map((one) => people.get(one.coach)?.initials ?? '?'))].join(', '),
      how,
      called: attempt.fact.called,
      verdict: verdictAt(pair, attempt, level),
      arc: arcSubject(evaluation.curriculum, pair, [attempt], level),
      moments: context.moments
        .filter((moment) => moment.attempt === attempt.fact.id)
        .map(({ id, startMs, endMs }) => ({
          id,
          href: `/desk/moments/${id}`,
          at: say(startMs / 1000),
          range: rangeWords(startMs / 1000, endMs === null ? null : endMs / 1000),
        })),
    }
  })
}
