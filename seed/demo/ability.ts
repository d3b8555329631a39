import { facetsOfSkill } from '../../lib/curriculum/edition/attach'
import type { Pair } from '../../lib/curriculum/edition/curriculum'
import type { Chance } from './chance'
import type { Ability } from './stories/story'

/** What there was to be seen of one attempt: a quality for each criterion, on the scale of ratings but not whole. */
export type Quality = ReadonlyMap<string, number>

/** How much harder a pair is than a drill, in points. */
function demandOf({ skill, holding }: Pair): number {
  const turns = facetsOfSkill(skill).halfSomersaults ?? 0
  const dive = skill.dive === null ? 0 : 0.1
  return dive + (turns > 2 ? 0.25 : turns === 2 ? 0.1 : 0) + (holding.place === '3m' ? 0.15 : 0)
}

/**
 * One attempt at a pair after `practised` recorded ones. What is being learned comes on along an exponential; what keeps
 * a diver safe is asked from the first day and wavers little.
 */
export function qualityOf(pair: Pair, ability: Ability, practised: number, chance: Chance): Quality {
  const learned = 1 - Math.exp(-practised / ability.pace)
  const usual = ability.fresh + (ability.learned - ability.fresh) * learned - demandOf(pair)
  const habit = ability.safe - 0.2 * (1 - learned)
  // A dive comes off or it does not: part of the spread is shared by all that is seen of it.
  const day = chance.normal(0.15)
  return new Map(
    pair.criteria.map(({ criterion }) => {
      const names = [criterion.key, criterion.phase, `${pair.key} ${criterion.key}`]
      const marked = names.reduce((sum, name) => sum + (ability.marked?.[name] ?? 0), 0)
      const spread = criterion.critical ? chance.normal(0.25) : chance.normal(0.35) + day
      return [criterion.key, (criterion.critical ? habit : usual) + marked + spread]
    }),
  )
}
