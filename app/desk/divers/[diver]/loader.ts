import { notFound } from 'next/navigation'
import { canCoach, canDecide, canReview, postIn } from '@/lib/access/can'
import { scopeOf } from '@/lib/access/scope'
import { requireActor } from '@/lib/access/session'
import { type ArcSubject, arcSubject } from '@/lib/assessment/arc-subject'
import { standDownsOn } from '@/lib/assessment/block'
import type { Consents } from '@/lib/assessment/consent'
import { doubtRoots } from '@/lib/assessment/doubt-roots'
import { careSince, sayCare } from '@/lib/assessment/growth'
import type { HoldingState } from '@/lib/assessment/holding-state'
import { openIncidents } from '@/lib/assessment/incident'
import { recordEntries } from '@/lib/assessment/lists'
import { type OpenState, openState } from '@/lib/assessment/open'
import { type Evaluation, evaluationOf } from '@/lib/assessment/readiness/evaluation'
import { type ExplainedNode, explain, sayBinding } from '@/lib/assessment/readiness/explain'
import type { Remaining } from '@/lib/assessment/readiness/finding'
import { focus, sayFocus } from '@/lib/assessment/readiness/focus'
import { remaining } from '@/lib/assessment/readiness/remaining'
import { sayBlock } from '@/lib/assessment/readiness/say-block'
import { sayDoubtRoot } from '@/lib/assessment/readiness/say-doubt'
import { sayEntry } from '@/lib/assessment/readiness/say-entry'
import { sayTarget } from '@/lib/assessment/readiness/say-target'
import { isAsked } from '@/lib/assessment/readiness/target-standing'
import { listTargets, readTarget } from '@/lib/assessment/readiness/targets'
import { dayName, pairName, stepName, type Words } from '@/lib/assessment/readiness/wording'
import type { TargetKey } from '@/lib/assessment/record'
import { readDiver } from '@/lib/assessment/store/reads'
import { readCare } from '@/lib/assessment/store/safety'
import { asOfInstant } from '@/lib/assessment/time'
import { type PairKey, pairKey } from '@/lib/curriculum/edition/curriculum'
import { type Place, placeFacts, places } from '@/lib/curriculum/place'
import { familyName, listFamilies } from '@/lib/curriculum/tree/family-graph'
import { systemClock } from '@/lib/platform/clock'

export interface TargetView {
  readonly key: string
  readonly step: string
  /** Where the head coach decides it; null for others, and while there is nothing to decide. */
  readonly href: string | null
  /** The level to work for, or the nearest board move. */
  readonly next: boolean
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

/** Something signed that is in doubt or lapses, and what is in doubt with it. */
export interface DoubtView {
  readonly key: string
  readonly word: 'in doubt' | 'lapses' | 'lapsed'
  readonly href: string
  /** The skill, and what follows it in the sentence. */
  readonly name: string
  readonly says: string
  readonly resting: readonly SkillView[]
}

export interface DiverPage {
  readonly id: string
  readonly name: string
  readonly level: string
  readonly where: string
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
  readonly doubts: readonly DoubtView[]
  readonly places: readonly { readonly place: Place; readonly label: string; readonly skills: readonly SkillView[] }[]
  readonly trees: readonly { readonly family: string; readonly label: string; readonly href: string }[]
  readonly focus: readonly string[]
  /** The last attempts by day, newest first. */
  readonly recent: readonly { readonly day: string; readonly attempts: readonly RecentAttempt[] }[]
}

interface RecentAttempt {
  readonly id: string
  readonly name: string
  readonly arc: ArcSubject
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

/** How a diver stands to a level or board move, in words; levels and moves inside it are named, since each has its own. */
export function toTarget(evaluation: Evaluation, target: TargetKey, words: Words): Omit<TargetView, 'href' | 'next'> {
  const found = readTarget(evaluation, target)
  const left = found.held === 'no' && isAsked(evaluation, target) ? remaining(evaluation, target) : null
  return {
    key: target,
    step: stepName(target, words),
    held: found.held,
    ready: found.ready,
    headline: sayTarget(found, words, left).headline,
    blocks: found.blocks.map((block) => sayBlock(block, words)),
    finding: explain(found.finding, words, 'named'),
  }
}

const far = (left: Remaining): number => (left.kind === 'never' ? Number.POSITIVE_INFINITY : left.attempts)

/** Levels in order, then board moves; the next level and the nearest move are marked. `said` stands on the page already. */
function listViews({ actor, desk, evaluation, words }: DiverNow, said: ReadonlySet<string>): TargetView[] {
  const decides = canDecide(actor, desk.file.club)
  const views = listTargets(evaluation.curriculum).map((target) => ({ target, ...toTarget(evaluation, target, words) }))
  const open = views.filter(({ held, ready }) => held === 'no' && !ready)
  const level = open.find(({ key }) => key.startsWith('level:'))
  const [move] = open
    .filter(({ key }) => key.startsWith('move:'))
    .map(({ key, target }) => ({ key, left: far(remaining(evaluation, target)) }))
    .filter(({ left }) => Number.isFinite(left))
    .sort((a, b) => a.left - b.left)
  return views.map(({ target: _, ...view }) => ({
    ...view,
    blocks: view.blocks.filter((block) => !said.has(block)),
    next: view.key === level?.key || view.key === move?.key,
    href:
      decides && (view.ready || view.held === 'to review')
        ? `/desk/queue/${desk.file.id}/${encodeURIComponent(view.key)}`
        : null,
  }))
}

/** What is in doubt, gathered by what fell, and what lapses. */
function listDoubts({ desk, evaluation, words }: DiverNow): DoubtView[] {
  const entries = recordEntries(evaluation)
  const skill = (key: PairKey) => toSkill(evaluation, desk.file.id, key, words)
  const roots = doubtRoots(entries.flatMap((entry) => (entry.list === 'in doubt' ? [entry.chain] : [])))
  const about = (pair: PairKey, sentence: string) => {
    const name = pairName(pair, words)
    return { href: skill(pair).href, name, says: sentence.slice(name.length) }
  }
  return [
    ...roots.map(({ link, resting }) => ({
      key: `doubt ${link.pair}`,
      word: 'in doubt' as const,
      ...about(link.pair, sayDoubtRoot(link, words)),
      resting: resting.map(skill),
    })),
    ...entries.flatMap((entry) =>
      entry.list === 'lapsing'
        ? {
            key: `lapse ${entry.pair}`,
            word: entry.signed.state === 'lapsed' ? ('lapsed' as const) : ('lapses' as const),
            ...about(entry.pair, sayEntry(entry, words)),
            resting: [],
          }
        : [],
    ),
  ]
}

const recentShown = 6

function listRecent({ desk: { file }, evaluation, words }: DiverNow): DiverPage['recent'] {
  const days = new Map<string, RecentAttempt[]>()
  for (const fact of [...evaluation.record.attempts].slice(-recentShown).reverse()) {
    const pair = evaluation.curriculum.pairs.get(fact.pair)
    const seen = evaluation.history(fact.pair)?.attempts.find((attempt) => attempt.fact.id === fact.id)
    if (!pair || !seen) continue
    const level = Math.max(pair.level, evaluation.curriculum.levelIndex(fact.atLevel))
    const arc = arcSubject(evaluation.curriculum, pair, [seen], level)
    const day = dayName(fact.day, words)
    days.set(day, [...(days.get(day) ?? []), { id: `${file.id} ${fact.id}`, name: pairName(fact.pair, words), arc }])
  }
  return [...days].map(([day, attempts]) => ({ day, attempts }))
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

/** The highest level that is held, recognised too. */
const levelOf = (targets: readonly TargetView[]): string =>
  targets.findLast(({ key, held }) => key.startsWith('level:') && held !== 'no')?.step ?? 'no level yet'

/** Everything on a diver's page: what comes next and why, what is in doubt, focus, holdings. */
export async function loadDiver(diver: string): Promise<DiverPage> {
  const now = await loadDiverNow(diver)
  const { actor, desk, evaluation, words } = now
  const standDowns = standDownsOn(evaluation).map((block) => sayBlock(block, words))
  const safety = await loadSafetyNotes(now)
  const targets = listViews(now, new Set([...standDowns, ...(safety?.warnings ?? [])]))
  const next = targets.find((target) => target.held === 'no') ?? targets.at(-1)
  const asked = listTargets(evaluation.curriculum).filter((target) => isAsked(evaluation, target))
  const skills = [...evaluation.curriculum.pairs.values()].map((pair) => ({
    place: pair.holding.place,
    view: toSkill(evaluation, desk.file.id, pairKey(pair.holding), words),
  }))
  return {
    id: desk.file.id,
    name: `${desk.file.givenName} ${desk.file.familyName}`,
    level: levelOf(targets),
    where: [desk.file.clubName, ...desk.file.squads].join(' · '),
    headed: canDecide(actor, desk.file.club),
    standDowns,
    safety,
    headline: next?.headline ?? '',
    targets,
    toSign: skills.filter(({ view }) => view.state === 'to sign').map(({ view }) => view),
    doubts: listDoubts(now),
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
    focus: focus(evaluation, asked).map((one) => sayFocus(one, words)),
    recent: listRecent(now),
  }
}
