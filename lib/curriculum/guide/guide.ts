import type { AttachedCriterion, Curriculum, Pair } from '../edition/curriculum'
import { type FaultAt, faultsAt } from '../edition/fault-at'
import { type Criterion, type Phase, phaseSets, type Rating } from '../model'

/** Levels, by index and both inclusive, between which no criterion of the pair asks for more. */
export interface Stage {
  readonly first: number
  readonly last: number
}

/** What a criterion asks from one stage to another, by index and both inclusive, and what is seen at that rating. */
export interface Step {
  readonly from: number
  readonly until: number
  readonly rating: Rating
  readonly anchor: string
}

/** A criterion with what each stage asks of it; `others` are the ratings that no stage asks. */
export interface GuideCriterion {
  readonly criterion: Criterion
  readonly steps: readonly Step[]
  readonly others: readonly { readonly rating: Rating; readonly anchor: string }[]
}

/** A phase with its criteria in key order and its faults, the most usual of each criterion first. */
export interface GuidePhase {
  readonly phase: Phase
  readonly criteria: readonly GuideCriterion[]
  readonly faults: readonly FaultAt[]
}

/** The reading page of a (skill, place): stages from the level that teaches it to the highest, phases in their order. */
export interface Guide {
  readonly stages: readonly Stage[]
  readonly phases: readonly GuidePhase[]
}

const asks = (criteria: readonly AttachedCriterion[], level: number): string =>
  criteria.map(({ expects }) => expects[level] ?? 0).join(' ')

/** The stages of a pair: an attempt is never judged below the level that teaches it, so that nothing is asked before. */
function stagesOf({ levels }: Curriculum, { level, criteria }: Pair): Stage[] {
  const stages: Stage[] = []
  for (let at = Math.max(0, level); at < levels.length; at++) {
    const last = stages.at(-1)
    if (last && asks(criteria, last.first) === asks(criteria, at)) stages[stages.length - 1] = { ...last, last: at }
    else stages.push({ first: at, last: at })
  }
  return stages
}

function stepsOf({ criterion, expects }: AttachedCriterion, stages: readonly Stage[]): Step[] {
  const steps: Step[] = []
  for (const [index, { first }] of stages.entries()) {
    const rating = expects[first] ?? 0
    const last = steps.at(-1)
    if (rating === 0) continue
    if (last?.rating === rating) steps[steps.length - 1] = { ...last, until: index }
    else steps.push({ from: index, until: index, rating, anchor: criterion.anchors[rating] })
  }
  return steps
}

function toCriterion(attached: AttachedCriterion, stages: readonly Stage[]): GuideCriterion {
  const { criterion } = attached
  const steps = stepsOf(attached, stages)
  const others = ([0, 1, 2, 3, 4] as const).filter((rating) => steps.every((step) => step.rating !== rating))
  return { criterion, steps, others: others.map((rating) => ({ rating, anchor: criterion.anchors[rating] })) }
}

/**
 * The guide of a pair, computed from its edition: each rating that a level asks stands in it once, from where it is asked to
 * where more is; each fault once, in the first phase whose criteria name it. Phases without a criterion are left out.
 */
export function guideOf(curriculum: Curriculum, pair: Pair): Guide {
  const stages = stagesOf(curriculum, pair)
  const named = new Set<string>()
  const phases = phaseSets[pair.skill.phaseSet].flatMap((phase): GuidePhase[] => {
    const own = pair.criteria.filter(({ criterion }) => criterion.phase === phase)
    if (own.length === 0) return []
    const keys = [...new Set(own.flatMap(({ criterion }) => criterion.faults))].filter((key) => !named.has(key))
    for (const key of keys) named.add(key)
    return [
      {
        phase,
        criteria: own.map((attached) => toCriterion(attached, stages)),
        faults: faultsAt(curriculum, pair, keys),
      },
    ]
  })
  return { stages, phases }
}

/** The stage, by index, that a level index falls into; the first for one below it. */
export const stageAt = ({ stages }: Guide, level: number): number =>
  Math.max(
    0,
    stages.findIndex(({ first, last }) => level >= first && level <= last),
  )
