import { pointerTo } from '../../edition/pointer'
import type { LintProblem, Rule } from '../problem'

/** The second and later items under the same key, each named with its place. */
function repeated<Item>(
  items: readonly Item[],
  keyOf: (item: Item) => string,
  what: string,
  at: readonly PropertyKey[],
): LintProblem[] {
  const seen = new Set<string>()
  return items.flatMap((item, index) => {
    const key = keyOf(item)
    if (!seen.has(key)) {
      seen.add(key)
      return []
    }
    const message = `${what} ${key} stands twice; give this one another key, or take it away`
    return [{ code: 'duplicate-key', path: pointerTo(...at, index), message }]
  })
}

const key = (item: { readonly key: string }): string => item.key
const place = (item: { readonly place: string }): string => item.place

/** Keys that stand twice: the second would hide the first. */
export const duplicates: Rule = ({ document }) => [
  ...repeated(document.levels, key, 'level', ['levels']),
  ...repeated(document.skills, key, 'skill', ['skills']),
  ...repeated(document.criteria, key, 'criterion', ['criteria']),
  ...repeated(document.faults, key, 'fault', ['faults']),
  ...repeated(document.boardMoves, key, 'board move', ['boardMoves']),
  ...repeated(document.boardMoves, (move) => `${move.family} to ${move.to}`, 'board move', ['boardMoves']),
  ...repeated(document.layOff, place, 'the lay-off rule for', ['layOff']),
  ...repeated(document.events ?? [], key, 'event', ['events']),
  ...document.skills.flatMap((skill, s) => repeated(skill.places, place, `${skill.key} at`, ['skills', s, 'places'])),
  ...document.criteria.flatMap((criterion, c) =>
    repeated(criterion.expects, (step) => step.level, `${criterion.key} at level`, ['criteria', c, 'expects']),
  ),
  ...Object.keys(document.levelMap)
    .filter((old) => document.levels.some((level) => level.key === old))
    .map((old): LintProblem => {
      const message = `the level map sends ${old} elsewhere, but this edition has a level ${old}; take it off the map`
      return { code: 'duplicate-key', path: pointerTo('levelMap', old), message }
    }),
]
