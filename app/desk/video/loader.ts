import { notFound } from 'next/navigation'
import type { ExemplarView } from '@/app/_components/domain/clip/exemplar-list'
import { nearest, ofCriterion, ofFault } from '@/app/curriculum/exemplar/loader'
import { listQuestionsToAnswer, type QuestionView } from '@/app/desk/questions/loader'
import { canCoach, canPublish } from '@/lib/access/can'
import { coachingScopeOf } from '@/lib/access/scope'
import { requireActor, requireCoach } from '@/lib/access/session'
import { dayName, pairName } from '@/lib/assessment/readiness/wording'
import { type Exemplar, readExemplars } from '@/lib/assessment/store/exemplars'
import { readWaiting } from '@/lib/assessment/store/filmed'
import { readOpening } from '@/lib/assessment/store/grants'
import { type Look, readLooks } from '@/lib/assessment/store/second-look'
import { dayIn } from '@/lib/assessment/time'
import { expectedAt } from '@/lib/assessment/verdict'
import type { Curriculum } from '@/lib/curriculum/edition/curriculum'
import { phaseSets, type Rating } from '@/lib/curriculum/model'
import { systemClock } from '@/lib/platform/clock'
import { type LookFilm, loadFilms } from './[attempt]/loader'

/** A line of what there is to look at. */
export interface LookRow {
  readonly href: string
  readonly who: string
  readonly name: string
  readonly day: string
  readonly how: 'granted' | 'of the club'
}

export interface VideoPage {
  readonly looks: readonly LookRow[]
  /** What a head coach asked about the reader's own moments, and still stands. */
  readonly questions: readonly QuestionView[]
  /** Whether looks across clubs are open; null for whoever does not set it. */
  readonly open: boolean | null
  readonly coaches: boolean
  /** Attempts that were filmed and wait for their clip. */
  readonly waiting: number
}

/** What a coach may look at; for the lead, whether looks across clubs are open. */
export async function loadVideo(): Promise<VideoPage> {
  const actor = await requireActor()
  const coaches = canCoach(actor)
  const lead = canPublish(actor)
  if (!coaches && !lead) notFound()
  const scope = coachingScopeOf(actor, systemClock())
  const { looks, curriculum } = coaches ? await readLooks(scope) : { looks: [], curriculum: null }
  const today = dayIn(scope.at, scope.zone)
  return {
    coaches,
    waiting: coaches ? (await readWaiting(scope)).waiting.length : 0,
    questions: coaches ? await listQuestionsToAnswer(scope) : [],
    open: lead ? await readOpening(scope) : null,
    looks: looks.flatMap((look) => {
      if (!curriculum) return []
      const href = `/desk/video/${look.attempt}`
      const name = pairName(look.pair.key, { curriculum })
      return [{ href, who: look.givenName, name, day: dayName(look.day, { today }), how: look.how }]
    }),
  }
}

/** One criterion to rate: its anchors, and what is expected. */
export interface LookCriterion {
  readonly key: string
  readonly title: string
  readonly statement: string
  readonly critical: boolean
  readonly expected: Rating
  readonly anchors: readonly string[]
  /** Moments that show it as this level asks it; none of this attempt, which is rated blind. */
  readonly exemplars: readonly ExemplarView[]
  /** What the coach's own measures suggest; nobody else's. */
  readonly measured: readonly string[]
}

export interface LookPage {
  readonly attempt: string
  readonly who: string
  readonly name: string
  readonly day: string
  readonly films: readonly LookFilm[]
  readonly phases: readonly { readonly phase: string; readonly criteria: readonly LookCriterion[] }[]
  readonly faults: readonly {
    readonly key: string
    readonly seen: string
    readonly exemplars: readonly ExemplarView[]
  }[]
}

/** What stands beside the ratings: the edition, exemplars of others' attempts, what the coach's own measures suggest by criterion. */
interface Beside {
  readonly curriculum: Curriculum
  readonly exemplars: readonly Exemplar[]
  readonly suggested: ReadonlyMap<string, readonly string[]>
}

function phasesOf({ pair, level }: Look, { curriculum, exemplars, suggested }: Beside): LookPage['phases'] {
  return phaseSets[pair.skill.phaseSet]
    .map((phase) => ({
      phase,
      criteria: pair.criteria
        .filter(({ criterion }) => criterion.phase === phase)
        .map((attached): LookCriterion => {
          const { key, title, statement, critical, anchors } = attached.criterion
          const expected = expectedAt(attached, level)
          const fits = (at: number) => expectedAt(attached, at) === expected
          const own = ofCriterion(exemplars, key, curriculum, fits)
          return {
            ...{ key, title, statement, critical, anchors, expected },
            measured: suggested.get(key) ?? [],
            exemplars: nearest(own, pair.key, curriculum),
          }
        }),
    }))
    .filter(({ criteria }) => criteria.length > 0)
}

function faultsOf({ pair }: Look, { curriculum, exemplars }: Beside): LookPage['faults'] {
  const keys = new Set(pair.criteria.flatMap(({ criterion }) => criterion.faults))
  return [...keys].flatMap((key) => {
    const seen = curriculum.faults.get(key)?.seen
    return seen === undefined ? [] : [{ key, seen, exemplars: nearest(ofFault(exemplars, key), pair.key, curriculum) }]
  })
}

/** One attempt to rate blind; what is not there to be looked at is not found. */
export async function loadLook(attempt: string): Promise<LookPage> {
  const actor = await requireCoach()
  const scope = coachingScopeOf(actor, systemClock())
  const { looks, curriculum } = await readLooks(scope)
  const look = looks.find((one) => one.attempt === attempt)
  if (!look) notFound()
  const name = pairName(look.pair.key, { curriculum })
  const { films, suggested } = await loadFilms(scope, look, curriculum)
  const beside = { curriculum, suggested, exemplars: await readExemplars(scope, attempt) }
  return {
    attempt,
    who: look.givenName,
    name,
    day: dayName(look.day, { today: dayIn(scope.at, scope.zone) }),
    films,
    phases: phasesOf(look, beside),
    faults: faultsOf(look, beside),
  }
}
