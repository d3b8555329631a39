import { validAt } from '../../dives/difficulty'
import type { Dive } from '../../dives/model'
import { parseDive } from '../../dives/parse'
import { phaseSetOf } from '../../edition/dive-skill'
import { pointerTo } from '../../edition/pointer'
import type { Skill } from '../../model'
import { placeFacts } from '../../place'
import type { LintProblem, Rule } from '../problem'

const diveOf = (skill: Skill): Dive | null => {
  const parsed = skill.dive === null ? null : parseDive(skill.dive)
  return parsed?.ok ? parsed.dive : null
}

function misdescribed(skill: Skill, index: number): LintProblem[] {
  const at = (field: string, message: string): LintProblem[] => [
    { code: 'dive-misdescribed', path: pointerTo('skills', index, field), message },
  ]
  const dive = diveOf(skill)
  if (!dive) return []
  if (skill.family !== dive.family)
    return at(
      'family',
      `${skill.key} stands in the family ${skill.family}, but ${dive.canonical} is a ${dive.family} dive`,
    )
  if (skill.approach === null)
    return at('approach', `${skill.key} does not say how it starts; write running or standing`)
  const phases = phaseSetOf(dive, skill.approach)
  if (phases === null || phases === skill.phaseSet) return []
  return at(
    'phaseSet',
    `${skill.key} is watched as "${skill.phaseSet}", but a ${skill.approach} ${dive.canonical} has the phases "${phases}"`,
  )
}

/** Dives at a springboard where they cannot be done, and dives whose family or phases are not those of the number. */
export const dives: Rule = ({ document, pairs }) => [
  ...document.skills.flatMap(misdescribed),
  ...pairs.flatMap(({ pair, path }): LintProblem[] => {
    const dive = diveOf(pair.skill)
    const { height } = placeFacts[pair.at.place]
    if (!dive || (height !== 1 && height !== 3)) return []
    const valid = validAt(dive, height)
    if (valid.ok) return []
    const message = `${valid.error.message}; take the place away, or teach another dive`
    return [{ code: 'dive-impossible-here', path: `${path}/place`, message }]
  }),
]
