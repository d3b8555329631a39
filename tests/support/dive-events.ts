import { parseDive } from '@/lib/curriculum/dives/parse'
import type { Curriculum } from '@/lib/curriculum/edition/curriculum'
import { phaseSetOf, usualApproach } from '@/lib/curriculum/edition/dive-skill'
import type { Event, EventPart, EventPlace } from '@/lib/curriculum/event/model'
import type { Skill } from '@/lib/curriculum/model'
import { tinyEdition, tinyPlace } from '@/tests/support/tiny-edition'
import { curriculumOf } from './small-coast'

/** A dive of the small edition at both boards, with nothing before it. */
export function diveSkill(number: string): Skill {
  const parsed = parseDive(number)
  if (!parsed.ok) throw new Error(parsed.error.message)
  const approach = usualApproach(parsed.dive)
  const phaseSet = phaseSetOf(parsed.dive, approach)
  if (!phaseSet) throw new Error(`${number} is watched in no phases`)
  return {
    key: number,
    title: number,
    family: parsed.dive.family,
    dive: number,
    approach,
    phaseSet,
    facets: {},
    summary: 'A dive.',
    places: [tinyPlace('1m', 'one'), tinyPlace('3m', 'one')],
  }
}

export const aPart = (count: number, distinctFamilies = 1, difficultyCap: number | null = null): EventPart => ({
  count,
  distinctFamilies,
  difficultyCap,
})

export const anEvent = (place: EventPlace, parts: readonly EventPart[], changes: Partial<Event> = {}): Event => ({
  key: 'trophy',
  title: 'Autumn trophy',
  season: 2026,
  ageBand: { from: null, to: null },
  place,
  parts,
  ...changes,
})

/** The small edition with these dives for all its dives, without moves, and with one event. */
export const coastWith = (dives: readonly string[], event: Event): Curriculum =>
  curriculumOf({
    skills: [...tinyEdition().skills.filter(({ dive }) => dive === null), ...dives.map(diveSkill)],
    boardMoves: [],
    levels: tinyEdition().levels.slice(0, 1),
    layOff: [],
    events: [event],
  })
