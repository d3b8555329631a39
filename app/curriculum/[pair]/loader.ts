import { notFound } from 'next/navigation'
import type { ExemplarView } from '@/app/_components/domain/clip/exemplar-list'
import { scopeOf } from '@/lib/access/scope'
import { requireActor } from '@/lib/access/session'
import { type ArcSubject, arcSubject } from '@/lib/assessment/arc-subject'
import { sayAsked } from '@/lib/assessment/measure/wording-asked'
import { listed } from '@/lib/assessment/readiness/grammar'
import { sayRequirement } from '@/lib/assessment/readiness/say-requirement'
import { sayStandard } from '@/lib/assessment/readiness/say-standard'
import { levelName, pairName, ratingWord } from '@/lib/assessment/readiness/wording'
import { type Exemplar, readExemplars } from '@/lib/assessment/store/exemplars'
import { difficultyTenths, formatTenths } from '@/lib/curriculum/dives/difficulty'
import { parseDive } from '@/lib/curriculum/dives/parse'
import type { Curriculum, Pair, PairKey } from '@/lib/curriculum/edition/curriculum'
import { pairKey } from '@/lib/curriculum/edition/curriculum'
import type { FaultAt } from '@/lib/curriculum/edition/fault-at'
import { type Guide, type GuideCriterion, guideOf, type Stage, type Step, stageAt } from '@/lib/curriculum/guide/guide'
import { placeFacts } from '@/lib/curriculum/place'
import { familyName } from '@/lib/curriculum/tree/family-graph'
import { listOpened } from '@/lib/curriculum/tree/opens'
import type { TreeKey } from '@/lib/curriculum/tree/target'
import { levelKey, moveKey } from '@/lib/curriculum/tree/target'
import { systemClock } from '@/lib/platform/clock'
import { nearest, ofCriterion, ofFault } from '../exemplar/loader'
import { type AskedView, familiesHref, type HrefOf, loadEdition, targetHref, viewAsked } from '../loader'

/** A name, and where it is read; null where this reader has no page for it. */
export interface Way {
  readonly href: string | null
  readonly name: string
}

/** What a criterion asks from one stage to another, in words. */
export interface StepView {
  readonly from: number
  readonly until: number
  /** "From Reach", "More from Offing". */
  readonly when: string
  /** "3, sound". */
  readonly asks: string
  readonly anchor: string
  readonly exemplars: readonly ExemplarView[]
}

export interface CriterionView {
  readonly key: string
  readonly title: string
  readonly statement: string
  readonly critical: boolean
  readonly steps: readonly StepView[]
  /** What is seen at the ratings that no level asks. */
  readonly others: readonly string[]
  /** Where the chosen stage does not ask it yet. */
  readonly notYet: string | null
  /** What may be measured for it on video, in sentences; none where nothing is. */
  readonly measured: readonly string[]
}

export interface FaultView {
  readonly key: string
  readonly seen: string
  readonly causes: readonly string[]
  readonly corrections: readonly { readonly kind: string; readonly text: string; readonly drill: Way | null }[]
  readonly exemplars: readonly ExemplarView[]
}

export interface StageView {
  readonly name: string
  readonly href: string
  readonly chosen: boolean
  readonly arc: ArcSubject
}

export interface GuideView {
  readonly pair: string
  readonly name: string
  readonly dive: string | null
  readonly summary: string
  readonly level: string
  readonly signer: string
  readonly elsewhere: readonly Way[]
  /** One sentence a height of a springboard; none for a lead-up. */
  readonly difficulty: readonly string[]
  readonly standard: readonly string[]
  readonly restsOn: AskedView | null
  readonly opens: readonly Way[]
  readonly stages: readonly StageView[]
  /** The index of the stage that is read. */
  readonly chosen: number
  /** What the chosen stage asks more than the one before it. */
  readonly change: string
  readonly phases: readonly {
    readonly phase: string
    readonly criteria: readonly CriterionView[]
    readonly faults: readonly FaultView[]
  }[]
}

/** Who reads: the edition, the exemplars that she may see, where a target is read, and the address of this guide. */
export interface GuideReader {
  readonly curriculum: Curriculum
  readonly exemplars: readonly Exemplar[]
  readonly hrefOf: HrefOf
  readonly base: string
}

function sayDifficulty({ skill }: Pair): string[] {
  const parsed = skill.dive ? parseDive(skill.dive) : null
  if (!parsed?.ok) return []
  return ([1, 3] as const).map((height) => {
    const found = difficultyTenths(parsed.dive, height)
    return found.ok ? `difficulty ${formatTenths(found.tenths)} at ${height} m` : found.error.message
  })
}

/** A target of the tree as a link's words: a dive with its number. */
export function toWay(key: TreeKey, { curriculum, hrefOf }: Pick<GuideReader, 'curriculum' | 'hrefOf'>): Way {
  const { levels, boardMoves, pairs } = curriculum
  const step = levels.find((level) => levelKey(level.key) === key) ?? boardMoves.find((move) => moveKey(move) === key)
  const pair = pairs.get(key as PairKey)
  const number = pair?.skill.dive ? `${pair.skill.dive} ` : ''
  return { href: hrefOf(key), name: pair ? `${number}${pairName(pair.key, { curriculum })}` : (step?.title ?? key) }
}

const toFault = ({ key, seen, causes, corrections }: FaultAt, pair: Pair, reader: GuideReader): FaultView => ({
  key,
  seen,
  causes,
  corrections: corrections.map(({ kind, text, drill }) => ({
    kind,
    text,
    drill: drill ? toWay(pairKey(drill), reader) : null,
  })),
  exemplars: nearest(ofFault(reader.exemplars, key), pair.key, reader.curriculum),
})

function nameStage({ first, last }: Stage, { levels }: Curriculum): string {
  const [from, to] = [levels[first]?.title ?? '', levels[last]?.title ?? '']
  if (first === last) return from
  return last === first + 1 ? `${from} and ${to}` : `${from} to ${to}`
}

function toCriterion(
  { criterion, steps, others }: GuideCriterion,
  { guide, chosen, pair }: { readonly guide: Guide; readonly chosen: number; readonly pair: Pair },
  { curriculum, exemplars }: GuideReader,
): CriterionView {
  const levelOf = (stage: number): string => curriculum.levels[guide.stages[stage]?.first ?? 0]?.title ?? ''
  const shownAt = ({ from, until }: Step, level: number): boolean => {
    const stage = stageAt(guide, level)
    return from <= stage && stage <= until
  }
  const { key, title, statement, critical } = criterion
  const [first] = steps
  return {
    ...{ key, title, statement, critical },
    steps: steps.map((step, index) => {
      const { from, until, rating, anchor } = step
      const own = ofCriterion(exemplars, key, curriculum, (level) => shownAt(step, level))
      return {
        ...{ from, until, anchor },
        when: `${index > 0 ? 'More from' : from > 0 ? 'New from' : 'From'} ${levelOf(from)}`,
        asks: `${rating}, ${ratingWord[rating]}`,
        exemplars: nearest(own, pair.key, curriculum),
      }
    }),
    others: others.map(({ rating, anchor }) => `${rating}, ${ratingWord[rating]}: ${anchor}`),
    notYet: first && first.from > chosen ? `Not asked yet; from ${levelOf(first.from)} on it is.` : null,
    measured: criterion.measure ? sayAsked(criterion.measure) : [],
  }
}

/** What a stage asks beyond the one before: the criteria by name. */
function sayChange({ stages, phases }: Guide, chosen: number, curriculum: Curriculum): string {
  const before = stages[chosen - 1]
  const title = curriculum.levels[stages[chosen]?.first ?? 0]?.title ?? ''
  if (!before) return `${title} teaches it; each level after it asks at least as much.`
  const rises = phases
    .flatMap(({ criteria }) => criteria)
    .filter(({ steps }) => steps.some(({ from }) => from === chosen))
    .map(({ criterion }) => `“${criterion.title}”`)
  return `From ${title} on more is asked of ${listed(rises)}; the rest stays as at ${curriculum.levels[before.last]?.title ?? ''}.`
}

/** The guide of a pair for a reader, with the stage that a level's key falls into chosen. */
export function viewGuide(pair: Pair, level: string | undefined, reader: GuideReader): GuideView {
  const { curriculum, hrefOf, base } = reader
  const words = { curriculum }
  const { skill, at } = pair
  const guide = guideOf(curriculum, pair)
  const chosen = stageAt(guide, level === undefined ? pair.level : curriculum.levelIndex(level))
  return {
    pair: pair.key,
    name: pairName(pair.key, words),
    dive: skill.dive,
    summary: skill.summary,
    level: levelName(at.level, words),
    signer: at.signer === 'head' ? 'signed by a head coach' : 'signed by any coach of the club',
    elsewhere: skill.places
      .map(({ place }) => ({ key: pairKey({ skill: skill.key, place }), place }))
      .filter(({ key }) => key !== pair.key)
      .map(({ key, place }) => ({ href: hrefOf(key), name: placeFacts[place].label })),
    difficulty: sayDifficulty(pair),
    standard: sayStandard(pair.standard),
    restsOn: pair.prerequisite ? viewAsked(sayRequirement(pair.prerequisite, words), hrefOf) : null,
    opens: listOpened(curriculum, pair.key).map((key) => toWay(key, reader)),
    stages: guide.stages.map((stage, index) => ({
      name: nameStage(stage, curriculum),
      href: `${base}?level=${encodeURIComponent(curriculum.levels[stage.first]?.key ?? '')}`,
      chosen: index === chosen,
      arc: arcSubject(curriculum, pair, [], stage.first),
    })),
    chosen,
    change: sayChange(guide, chosen, curriculum),
    phases: guide.phases.map(({ phase, criteria, faults }) => ({
      phase,
      criteria: criteria.map((one) => toCriterion(one, { guide, chosen, pair }, reader)),
      faults: faults.map((fault) => toFault(fault, pair, reader)),
    })),
  }
}

export interface SkillPage {
  readonly guide: GuideView
  /** Where else it is read: in its family's tree, and by families. */
  readonly ways: readonly Way[]
}

/** The guide of a skill at a place, for whoever is signed in: all that the edition in force says of it. */
export async function loadSkill(encoded: string, level: string | undefined): Promise<SkillPage> {
  const { curriculum } = await loadEdition()
  const pair = curriculum.pairs.get(decodeURIComponent(encoded) as PairKey)
  if (!pair) notFound()
  const key = encodeURIComponent(pair.key)
  const families = await familiesHref(pair.key)
  const exemplars = await readExemplars(scopeOf(await requireActor(), systemClock()))
  return {
    guide: viewGuide(pair, level, { curriculum, exemplars, hrefOf: targetHref, base: `/curriculum/${key}` }),
    ways: [
      {
        href: `/curriculum/tree/${pair.skill.family}?at=${key}#tree-${key}`,
        name: `in the ${familyName(pair.skill.family)} tree`,
      },
      ...(families ? [{ href: families, name: 'as families read it' }] : []),
    ],
  }
}
