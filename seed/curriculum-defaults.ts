import { spokenName } from '../lib/curriculum/dives/name'
import { parseDive } from '../lib/curriculum/dives/parse'
import { phaseSetOf, usualApproach, usualSigner } from '../lib/curriculum/edition/dive-skill'
import { measureFacts, measureNames } from '../lib/curriculum/measure/model'
import type { Approach, SkillFamily } from '../lib/curriculum/model'
import { type Place, places } from '../lib/curriculum/place'
import { familySchema } from '../lib/curriculum/requirement/schema'

/** An object as it was written; what is in it is the schema's business. */
type Written = Readonly<Record<string, unknown>>

const isWritten = (value: unknown): value is Written =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

const filled =
  (fill: (written: Written) => Written) =>
  (value: unknown): unknown =>
    isWritten(value) ? fill(value) : value

const each = (value: unknown, fill: (item: unknown) => unknown): unknown =>
  Array.isArray(value) ? value.map(fill) : value

/** What follows from a dive number: name, family, approach and phases. */
function fromDive(number: unknown, approach: unknown): Written {
  const parsed = typeof number === 'string' ? parseDive(number) : null
  if (!parsed?.ok) return {}
  const usual = usualApproach(parsed.dive)
  const way: Approach = approach === 'running' || approach === 'standing' ? approach : usual
  const phaseSet = phaseSetOf(parsed.dive, way)
  return { title: spokenName(parsed.dive), family: parsed.dive.family, approach: usual, ...(phaseSet && { phaseSet }) }
}

function signerOf(family: unknown, place: unknown): Written {
  const known = places.find((name): name is Place => name === place)
  if (!known) return {}
  const parsed = familySchema.safeParse(family)
  const skillFamily: SkillFamily = parsed.success ? parsed.data : 'safety'
  return { signer: usualSigner(skillFamily, known) }
}

function fillSkill(written: Written): Written {
  const skill = { dive: null, approach: null, facets: {}, ...fromDive(written.dive, written.approach), ...written }
  const family = 'family' in skill ? skill.family : undefined
  const fillPlace = filled((at) => ({
    ...signerOf(family, at.place),
    beforeMove: false,
    prerequisite: null,
    standard: {},
    ...at,
  }))
  return { ...skill, places: each(written.places, fillPlace) }
}

/** A skill with what its author may leave out; anything but an object is left as it is. */
export const withSkillDefaults = filled(fillSkill)

const withMeasureDefaults = filled((written) => {
  const known = measureNames.find((name) => name === written.what)
  return { ...(known && { unit: measureFacts[known].unit }), source: null, ...written }
})

/** A criterion with what its author may leave out: it is not critical, lists no faults, and a measure has its own unit. */
export const withCriterionDefaults = filled((written) => ({
  critical: false,
  faults: [],
  ...written,
  ...('measure' in written && { measure: withMeasureDefaults(written.measure) }),
}))

/** An event with what its author may leave out: no limit of age, no cap, dives of one family and more. */
export const withEventDefaults = filled((written) => ({
  ...written,
  ageBand: filled((band) => ({ from: null, to: null, ...band }))(written.ageBand ?? {}),
  parts: each(
    written.parts,
    filled((part) => ({ distinctFamilies: 1, difficultyCap: null, ...part })),
  ),
}))

/** A fault with what its author may leave out: a correction that is no drill names none. */
export const withFaultDefaults = filled((written) => ({
  ...written,
  corrections: each(
    written.corrections,
    filled((correction) => ({ drill: null, ...correction })),
  ),
}))
