import { facetsOf } from '../dives/facets'
import { parseDive } from '../dives/parse'
import type { AppliesTo, Criterion, FacetMatcher, Phase, Skill, SkillFacets } from '../model'
import { phaseSets } from '../model'
import type { Place } from '../place'

/** What a skill does: of a dive from its number, of a lead-up what it states. Throws RangeError for a number that is no dive. */
export function facetsOfSkill(skill: Skill): SkillFacets {
  if (skill.dive === null) return skill.facets
  const parsed = parseDive(skill.dive)
  if (!parsed.ok) throw new RangeError(`skill "${skill.key}": ${parsed.error.message}`)
  const { direction, facing, sense, halfSomersaults, halfTwists, flying, position, enters } = facetsOf(parsed.dive)
  return { direction, facing: facing ?? undefined, sense, halfSomersaults, halfTwists, flying, position, enters }
}

/** The phases of a skill in their order. */
export const phasesOf = (skill: Skill): readonly Phase[] => phaseSets[skill.phaseSet]

const among = <Value>(allowed: readonly Value[] | undefined, value: Value | null | undefined): boolean =>
  allowed === undefined || (value !== null && value !== undefined && allowed.includes(value))

function within(range: FacetMatcher['halfSomersaults'], value: number | undefined): boolean {
  if (range === undefined) return true
  return value !== undefined && value >= (range.min ?? 0) && value <= (range.max ?? Number.POSITIVE_INFINITY)
}

/** True when every field that the matcher states fits; a facet that a lead-up does not state fits no matcher that asks for it. */
export function matches(match: FacetMatcher, skill: Skill, facets: SkillFacets, place: Place): boolean {
  return (
    among(match.families, skill.family) &&
    among(match.kinds, skill.dive === null ? 'lead-up' : 'dive') &&
    among(match.phaseSets, skill.phaseSet) &&
    among(match.approaches, skill.approach) &&
    among(match.directions, facets.direction) &&
    among(match.facing, facets.facing) &&
    among(match.sense, facets.sense) &&
    among(match.positions, facets.position) &&
    among(match.enters, facets.enters) &&
    within(match.halfSomersaults, facets.halfSomersaults) &&
    within(match.halfTwists, facets.halfTwists) &&
    among(match.places, place)
  )
}

const applies = (appliesTo: AppliesTo, skill: Skill, facets: SkillFacets, place: Place): boolean =>
  appliesTo.by === 'facets'
    ? matches(appliesTo.match, skill, facets, place)
    : appliesTo.skills.includes(skill.key) && among(appliesTo.places, place)

/** The criteria that attach to a skill at a place, in phase order, then key order. */
export function criteriaAt(criteria: readonly Criterion[], skill: Skill, place: Place): Criterion[] {
  const order = phasesOf(skill)
  const facets = facetsOfSkill(skill)
  return criteria
    .filter((criterion) => order.includes(criterion.phase) && applies(criterion.appliesTo, skill, facets, place))
    .sort((a, b) => order.indexOf(a.phase) - order.indexOf(b.phase) || (a.key < b.key ? -1 : 1))
}
