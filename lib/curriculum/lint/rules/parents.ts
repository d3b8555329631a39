import { facetsOfSkill } from '../../edition/attach'
import type { PairKey } from '../../edition/curriculum'
import type { SkillFacets } from '../../model'
import { placeFacts } from '../../place'
import type { LintProblem, Rule } from '../problem'

/** What a dive has to come after, and how that is said. */
interface Parent {
  readonly is: (facets: SkillFacets) => boolean
  readonly said: string
}

/** Common practice, no published source: a reverse dive rests on back entries, a twister on its somersault without a twist. */
function listParents(facets: SkillFacets): Parent[] {
  const twists = (facets.halfTwists ?? 0) > 0
  return [
    ...(facets.direction === 'reverse' && facets.enters === 'head-first'
      ? [
          {
            is: (earlier: SkillFacets) => earlier.direction === 'back' && earlier.enters === 'head-first',
            said: 'no back entry has to come before it',
          },
        ]
      : []),
    ...(twists
      ? [
          {
            is: (earlier: SkillFacets) =>
              earlier.direction === facets.direction &&
              earlier.halfSomersaults === facets.halfSomersaults &&
              (earlier.halfTwists ?? 0) === 0,
            said: 'the same somersault without a twist does not have to come before it',
          },
        ]
      : []),
  ]
}

/** Reverse dives without a back entry before them, and twisters without their parent somersault; over water only. */
export const parents: Rule = ({ pairs, before }) => {
  const facets = new Map<PairKey, SkillFacets>(
    pairs
      .filter(({ pair }) => placeFacts[pair.at.place].board)
      .map(({ pair }) => [pair.key, facetsOfSkill(pair.skill)] as const),
  )
  return pairs.flatMap(({ pair, name, path }): LintProblem[] => {
    const own = facets.get(pair.key)
    if (!own) return []
    const earlier = [...before(pair.key)].flatMap((key) => facets.get(key) ?? [])
    return listParents(own)
      .filter((parent) => !earlier.some(parent.is))
      .map(({ said }) => ({ code: 'parent-missing', path, message: `${name}: ${said}; require one` }))
  })
}
