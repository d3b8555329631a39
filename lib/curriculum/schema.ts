import { z } from 'zod'
import { families, positions } from './dives/model'
import { parseDive } from './dives/parse'
import { eventSchema } from './event/schema'
import { askedMeasureSchema } from './measure/schema'
import type { PhaseSet, SkillFamily } from './model'
import { phaseSets, phases } from './model'
import { familySchema, holdingSchema, keySchema, placeSchema, requirementSchema } from './requirement/schema'

const text = (name: string, most: number) =>
  z
    .string({ error: `${name} is text` })
    .trim()
    .min(1, { error: `${name} has words` })
    .max(most, { error: `${name} is at most ${most} characters` })

const oneOf = <const Values extends readonly [string, ...string[]]>(name: string, values: Values) =>
  z.enum(values, { error: `${name} is one of ${values.join(', ')}` })

const whole = (name: string, least: number) =>
  z
    .int({ error: `${name} is a whole number` })
    .min(least, { error: `${name} is at least ${least}` })
    .max(10_000)

const ratingSchema = z.union([z.literal(0), z.literal(1), z.literal(2), z.literal(3), z.literal(4)], {
  error: 'a rating is 0, 1, 2, 3 or 4',
})
const probability = z.number().gt(0).lt(1, { error: 'a probability lies between 0 and 1' })

const phaseSetNames = Object.keys(phaseSets) as [PhaseSet, ...PhaseSet[]]
const skillFamilies = ['safety', ...families] as const satisfies readonly SkillFamily[]

const phaseSchema = oneOf('a phase', phases)
const phaseSetSchema = oneOf('a phase set', phaseSetNames)
const skillFamilySchema = oneOf('a family', skillFamilies)
const directionSchema = oneOf('a direction', ['forward', 'back', 'reverse', 'inward'])
const facingSchema = oneOf('facing', ['out', 'in'])
const senseSchema = oneOf('the sense of a somersault', ['forwards', 'backwards'])
const positionSchema = oneOf('a position', positions)
const enterSchema = oneOf('the way of entering', ['head-first', 'feet-first'])
const approachSchema = oneOf('an approach', ['running', 'standing', 'armstand'])

const certaintySchema = z.strictObject({ rate: probability, at: probability, over: whole('over', 1) })

/** How much evidence a skill needs. */
export const standardSchema = z.strictObject({
  successes: whole('successes', 1),
  of: whole('of', 1),
  coaches: whole('coaches', 1),
  days: whole('days', 1),
  withinDays: whole('withinDays', 1),
  moments: whole('moments', 0),
  slack: whole('slack', 0).nullable(),
  clean: whole('clean', 1),
  certainty: certaintySchema.nullable(),
  validForDays: whole('validForDays', 1),
  recheck: z.strictObject({ successes: whole('recheck successes', 1), of: whole('recheck of', 1) }),
  recheckWithinDays: whole('recheckWithinDays', 0),
})

const skillFacetsSchema = z.strictObject({
  direction: directionSchema.optional(),
  facing: facingSchema.optional(),
  sense: senseSchema.optional(),
  halfSomersaults: whole('half somersaults', 0).optional(),
  halfTwists: whole('half twists', 0).optional(),
  flying: z.boolean().optional(),
  position: positionSchema.optional(),
  enters: enterSchema.optional(),
})

const skillPlaceSchema = z.strictObject({
  place: placeSchema,
  level: keySchema,
  signer: oneOf('a signer', ['coach', 'head']),
  beforeMove: z.boolean(),
  prerequisite: requirementSchema.nullable(),
  standard: standardSchema.partial(),
})

const diveNumberSchema = z.string().superRefine((number, context) => {
  const parsed = parseDive(number)
  if (!parsed.ok) context.addIssue({ code: 'custom', message: parsed.error.message })
  else if (parsed.dive.canonical !== number)
    context.addIssue({ code: 'custom', message: `write the dive as ${parsed.dive.canonical}` })
})

/** A dive or a lead-up with its places. */
export const skillSchema = z
  .strictObject({
    key: keySchema,
    title: text('a title', 60),
    family: skillFamilySchema,
    dive: diveNumberSchema.nullable(),
    approach: approachSchema.nullable(),
    phaseSet: phaseSetSchema,
    facets: skillFacetsSchema,
    summary: text('a summary', 600),
    places: z.array(skillPlaceSchema).min(1, { error: 'a skill is taught at one place at least' }),
  })
  .refine((skill) => skill.dive === null || Object.keys(skill.facets).length === 0, {
    path: ['facets'],
    error: 'the facets of a dive follow from its number: leave them empty',
  })

const range = z.strictObject({ min: z.int().min(0).optional(), max: z.int().min(0).optional() })
const some = <Item extends z.ZodType>(item: Item) =>
  z.array(item).min(1, { error: 'name at least one, or leave the field out' }).optional()

/** Which pairs a criterion attaches to. */
export const facetMatcherSchema = z.strictObject({
  families: some(skillFamilySchema),
  kinds: some(oneOf('a kind of skill', ['dive', 'lead-up'])),
  phaseSets: some(phaseSetSchema),
  approaches: some(approachSchema),
  directions: some(directionSchema),
  facing: some(facingSchema),
  sense: some(senseSchema),
  positions: some(positionSchema),
  enters: some(enterSchema),
  halfSomersaults: range.optional(),
  halfTwists: range.optional(),
  places: some(placeSchema),
})

const appliesToSchema = z.discriminatedUnion(
  'by',
  [
    z.strictObject({ by: z.literal('facets'), match: facetMatcherSchema }),
    z.strictObject({
      by: z.literal('skills'),
      skills: z.array(keySchema).min(1, { error: 'name at least one skill' }),
      places: some(placeSchema),
    }),
  ],
  { error: "a criterion applies by 'facets' or by 'skills'" },
)

const anchor = text('an anchor', 240)

/** A criterion with its five anchors. */
export const criterionSchema = z.strictObject({
  key: keySchema,
  phase: phaseSchema,
  title: text('the title of a criterion', 32),
  statement: text('a statement', 300),
  anchors: z.tuple([anchor, anchor, anchor, anchor, anchor], {
    error: 'a criterion has five anchors, for the ratings 0, 1, 2, 3 and 4',
  }),
  critical: z.boolean(),
  appliesTo: appliesToSchema,
  expects: z
    .array(z.strictObject({ level: keySchema, rating: ratingSchema }))
    .min(1, { error: 'say what is expected from at least one level on' }),
  faults: z.array(keySchema),
  measure: askedMeasureSchema.optional(),
})

/** A cue, a drill or conditioning. */
export const correctionSchema = z
  .strictObject({
    kind: oneOf('a correction', ['cue', 'drill', 'conditioning']),
    text: text('a correction', 240),
    drill: holdingSchema.nullable(),
    match: facetMatcherSchema.optional(),
  })
  .refine((correction) => (correction.kind === 'drill') === (correction.drill !== null), {
    path: ['drill'],
    error: 'a drill names its skill and place; a cue or conditioning names none',
  })

const causeText = text('a cause', 200)

/** A fault with causes and corrections. */
export const faultSchema = z.strictObject({
  key: keySchema,
  phase: phaseSchema,
  seen: text('what is seen', 34),
  causes: z
    .array(
      z.union([causeText, z.strictObject({ text: causeText, match: facetMatcherSchema })], {
        error: 'a cause is its words, or a text with the skills that match, as a criterion states them',
      }),
    )
    .min(1, { error: 'name at least one likely cause' }),
  corrections: z.array(correctionSchema).min(1, { error: 'name at least one correction' }),
})

const levelSchema = z.strictObject({
  key: keySchema,
  title: text('the title of a level', 40),
  summary: text('a summary', 600),
  requirement: requirementSchema,
})

const boardMoveSchema = z.strictObject({
  key: keySchema,
  title: text('the title of a board move', 40),
  family: familySchema,
  from: placeSchema,
  to: placeSchema,
  requirement: requirementSchema,
})

const layOffSchema = z.strictObject({
  place: placeSchema,
  afterDays: whole('afterDays', 1),
  reentry: z.array(holdingSchema).min(1, { error: 'name at least one re-entry step' }),
})

/** The written form of one edition: every field stated, unknown keys refused. What it means is `EditionDocument`. */
export const editionSchema = z.strictObject({
  schemaVersion: z.literal(1),
  programme: text('the programme', 80),
  title: text('the title', 80),
  levels: z.array(levelSchema).min(1, { error: 'an edition has at least one level' }),
  levelMap: z.record(keySchema, keySchema),
  standard: standardSchema,
  skills: z.array(skillSchema).min(1, { error: 'an edition has at least one skill' }),
  criteria: z.array(criterionSchema),
  faults: z.array(faultSchema),
  boardMoves: z.array(boardMoveSchema),
  layOff: z.array(layOffSchema),
  events: z.array(eventSchema).optional(),
})
