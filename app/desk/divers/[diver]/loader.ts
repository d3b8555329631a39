import { notFound } from 'next/navigation'
import { canCoach, canDecide, canReview, postIn } from '@/lib/access/can'
import { scopeOf } from '@/lib/access/scope'
import { requireActor } from '@/lib/access/session'
import { type ArcSubject, arcSubject } from '@/lib/assessment/arc-subject'
import { standDownsOn } from '@/lib/assessment/block'
import type { Consents } from '@/lib/assessment/consent'
import { careSince, sayCare } from '@/lib/assessment/growth'
import type { HoldingState } from '@/lib/assessment/holding-state'
import { openIncidents } from '@/lib/assessment/incident'
import { type OpenState, openState } from '@/lib/assessment/open'
import { type Evaluation, evaluationOf } from '@/lib/assessment/readiness/evaluation'
import { type ExplainedNode, explain, sayBinding } from '@/lib/assessment/readiness/explain'
import { focus, sayFocus } from '@/lib/assessment/readiness/focus'
import { remaining } from '@/lib/assessment/readiness/remaining'
import { sayBlock } from '@/lib/assessment/readiness/say-block'
import { sayTarget } from '@/lib/assessment/readiness/say-target'
import { listTargets, readTarget } from '@/lib/assessment/readiness/targets'
import { dayName, pairName, stepName, type Words } from '@/lib/assessment/readiness/wording'
import type { TargetKey } from '@/lib/assessment/record'
import { type DiverDesk, readDiver } from '@/lib/assessment/store/reads'
import { readCare } from '@/lib/assessment/store/safety'
import { asOfInstant } from '@/lib/assessment/time'
import { type PairKey, pairKey } from '@/lib/curriculum/edition/curriculum'
import { type Place, placeFacts, places } from '@/lib/curriculum/place'
import { familyName, listFamilies } from '@/lib/curriculum/tree/family-graph'
import { systemClock } from '@/lib/platform/clock'

export interface TargetView {
  readonly key: string
  readonly step: string
  readonly held: 'no' | 'approved' | 'recognised' | 'to review'
  readonly ready: boolean
  readonly headline: string
  readonly blocks: readonly string[]
  readonly finding: ExplainedNode
}

export interface SkillView {
  readonly href: string
  readonly name: string
  readonly dive: string | null
  readonly state: OpenState['state'] | 'recognised' | 'in doubt' | 'lapsed'
  readonly because: string | null
}

export interface DiverPage {
  readonly id: string
  readonly name: string
  readonly margin: string
  /** The actor is her head coach: keeps her particulars, and moves her on. */
  readonly headed: boolean
  readonly standDowns: readonly string[]
  /** For the coaches of her club: what is paused, what asks for care, which consents are missing. */
  readonly safety: {
    readonly href: string
    readonly warnings: readonly string[]
    readonly notes: readonly string[]
  } | null
  readonly headline: string
  readonly targets: readonly TargetView[]
  readonly toSign: readonly SkillView[]
  readonly places: readonly { readonly place: Place; readonly label: string; readonly skills: readonly SkillView[] }[]
  readonly trees: readonly { readonly family: string; readonly label: string; readonly href: string }[]
  readonly focus: readonly string[]
  readonly recent: readonly {
    readonly id: string
    readonly day: string
    readonly name: string
    readonly arc: ArcSubject
  }[]
}

/** One diver's desk, her evaluation now, and the words for it; not found outside the actor's clubs. */
export async function loadDiverNow(diver: string) {
  const actor = await requireActor()
  if (!canCoach(actor) && !canReview(actor)) notFound()
  const scope = scopeOf(actor, systemClock())
  const desk = /^[0-9a-f-]{36}$/.test(diver) ? await readDiver(scope, diver) : null
  if (!desk) notFound()
  const date = asOfInstant(scope.at, desk.file.zone)
  const evaluation = evaluationOf(desk.curriculum, desk.file.record, date)
  const words: Words = { curriculum: desk.curriculum, today: date.day, diver: desk.file.givenName }
  return { actor, scope, desk, evaluation, words }
}

type DiverNow = Awaited<ReturnType<typeof loadDiverNow>>

/** What became of a holding tells more than open or closed, and a recognition is no signature. */
function markOf(state: OpenState['state'], holding: HoldingState['state']): SkillView['state'] {
  if (state === 'held') return holding === 'recognised' ? holding : state
  return state !== 'to sign' && (holding === 'in doubt' || holding === 'lapsed') ? holding : state
}

/** How a pair stands for a diver, with the sentence for what closes it. */
export function toSkill(evaluation: Evaluation, diver: string, key: PairKey, words: Words): SkillView {
  const pair = evaluation.curriculum.pairs.get(key)
  const { state, because } = openState(evaluation, key)
  const holding = evaluation.holdings.of(key).state
  return {
    href: `/desk/divers/${diver}/${encodeURIComponent(key)}`,
    name: pair?.skill.title ?? key,
    dive: pair?.skill.dive ?? null,
    state: markOf(state, holding),
    because: because === null ? null : 'node' in because ? sayBinding(because, words) : sayBlock(because, words),
  }
}

/** How a diver stands to a level or board move, in words. */
export function toTarget(evaluation: Evaluation, target: TargetKey, words: Words): TargetView {
  const found = readTarget(evaluation, target)
  return {
    key: target,
    step: stepName(target, words),
    held: found.held,
    ready: found.ready,
    headline: sayTarget(found, words, found.held === 'no' ? remaining(evaluation, target) : null).headline,
    blocks: found.blocks.map((block) => sayBlock(block, words)),
    finding: explain(found.finding, words),
  }
}

const recentShown = 6

function toRecent({ file }: DiverDesk, evaluation: Evaluation, words: Words): DiverPage['recent'] {
  return [...evaluation.record.attempts]
    .slice(-recentShown)
    .reverse()
    .flatMap((fact) => {
      const pair = evaluation.curriculum.pairs.get(fact.pair)
      const seen = evaluation.history(fact.pair)?.attempts.find((attempt) => attempt.fact.id === fact.id)
      if (!pair || !seen) return []
      const level = Math.max(pair.level, evaluation.curriculum.levelIndex(fact.atLevel))
      const arc = arcSubject(evaluation.curriculum, pair, [seen], level)
      return [{ id: `${file.id} ${fact.id}`, day: dayName(fact.day, words), name: pairName(fact.pair, words), arc }]
    })
}

const consentsMissing = ({ record, video }: Consents): string[] => [
  ...(record?.given
    ? []
    : [
        record
          ? 'The consent to keep a record was withdrawn: nothing new is recorded but incidents.'
          : 'To do: no consent to keep a record is recorded yet.',
      ]),
  ...(video?.given ? [] : ['No consent to video is in force: no moment is kept or shown.']),
]

async function loadSafetyNotes({ actor, scope, desk, evaluation, words }: DiverNow): Promise<DiverPage['safety']> {
  const { file } = desk
  if (!postIn(actor, file.club)) return null
  const { consents, grown } = await readCare(scope, file.id)
  const care = careSince(grown, evaluation.date.day)
  return {
    href: `/desk/divers/${file.id}/safety`,
    warnings: openIncidents(file.record).map(({ id, pair, kind: what }) =>
      sayBlock({ kind: 'pause', pair, incident: id, what }, words),
    ),
    notes: [...(care === null ? [] : [sayCare(care, words)]), ...consentsMissing(consents)],
  }
}

/** Everything on a diver's page: levels and moves with reasons, what is missing, holdings, focus. */
export async function loadDiver(diver: string): Promise<DiverPage> {
  const now = await loadDiverNow(diver)
  const { actor, desk, evaluation, words } = now
  const targets = listTargets(evaluation.curriculum).map((target) => toTarget(evaluation, target, words))
  const next = targets.find((target) => target.held === 'no') ?? targets.at(-1)
  const skills = [...evaluation.curriculum.pairs.values()].map((pair) => ({
    place: pair.holding.place,
    view: toSkill(evaluation, desk.file.id, pairKey(pair.holding), words),
  }))
  return {
    id: desk.file.id,
    name: `${desk.file.givenName} ${desk.file.familyName}`,
    margin: [desk.file.clubName, ...desk.file.squads].join(' · '),
    headed: canDecide(actor, desk.file.club),
    standDowns: standDownsOn(evaluation).map((block) => sayBlock(block, words)),
    safety: await loadSafetyNotes(now),
    headline: next?.headline ?? '',
    targets,
    toSign: skills.filter(({ view }) => view.state === 'to sign').map(({ view }) => view),
    places: places
      .map((place) => ({
        place,
        label: placeFacts[place].label,
        skills: skills.filter((skill) => skill.place === place).map(({ view }) => view),
      }))
      .filter(({ skills: here }) => here.length > 0)
      .reverse(),
    trees: listFamilies(evaluation.curriculum).map((family) => ({
      family,
      label: familyName(family),
      href: `/desk/divers/${desk.file.id}/tree/${family}`,
    })),
    focus: focus(evaluation, listTargets(evaluation.curriculum)).map((one) => sayFocus(one, words)),
    recent: toRecent(desk, evaluation, words),
  }
}
