import { z } from 'zod'
import { families } from '../dives/model'
import { places } from '../place'
import type { Requirement } from './model'
import { venueFeatures } from './model'

/** The name of a skill, criterion, fault, level or board move: letters, digits and hyphens, so that `skill@place` is unambiguous. */
export const keySchema = z.string({ error: 'a key is text' }).regex(/^[A-Za-z0-9](?:[A-Za-z0-9-]{0,78}[A-Za-z0-9])?$/, {
  error: 'a key is 1 to 80 letters, digits and hyphens, and begins and ends with a letter or digit',
})

/** A place key. */
export const placeSchema = z.enum(places, { error: `a place is one of ${places.join(', ')}` })
/** A dive family. */
export const familySchema = z.enum(families, { error: `a dive family is one of ${families.join(', ')}` })

/** A skill at a place, by their keys. */
export const holdingSchema = z.strictObject({ skill: keySchema, place: placeSchema })

const reason = z.string().trim().min(1, { error: 'a reason, when given, has words' }).max(300).optional()
const count = z.int({ error: 'a count is a whole number' }).min(1, { error: 'a count is at least 1' }).max(1000)
const age = z.int({ error: 'an age is in whole years' }).min(1).max(120).optional()

/** Branches and leaves by kind; each is the written form of the node of that kind in model.ts. */
export const nodeSchemas = {
  all: z.strictObject({ kind: z.literal('all'), reason, of: z.lazy(() => children) }),
  any: z.strictObject({ kind: z.literal('any'), reason, of: z.lazy(() => children) }),
  atLeast: z.strictObject({ kind: z.literal('atLeast'), reason, n: count, of: z.lazy(() => children) }),
  signOff: z.strictObject({
    kind: z.literal('signOff'),
    reason,
    ...holdingSchema.shape,
    atLevel: keySchema.optional(),
  }),
  criterion: z.strictObject({
    kind: z.literal('criterion'),
    reason,
    criterion: keySchema,
    at: z.array(holdingSchema).min(1, { error: 'name at least one skill and place' }),
    rating: z.int().min(1).max(4, { error: 'a rating that is asked for is 1, 2, 3 or 4' }),
    times: count,
    of: count,
    withinDays: count,
  }),
  level: z.strictObject({ kind: z.literal('level'), reason, level: keySchema }),
  boardMove: z.strictObject({ kind: z.literal('boardMove'), reason, family: familySchema, to: placeSchema }),
  age: z.strictObject({
    kind: z.literal('age'),
    reason,
    min: age,
    max: age,
    on: z.enum(['the date', 'year-end'], { error: "an age is counted on 'the date' or at 'year-end'" }),
  }),
  diveList: z.strictObject({ kind: z.literal('diveList'), reason, event: keySchema }),
  venue: z.strictObject({
    kind: z.literal('venue'),
    reason,
    feature: z.enum(venueFeatures, { error: `a venue feature is one of ${venueFeatures.join(', ')}` }),
  }),
} as const

const kinds = Object.keys(nodeSchemas)

/** A requirement of any depth. Unknown kinds and unknown keys are refused. */
export const requirementSchema: z.ZodType<Requirement> = z.lazy(() =>
  z.discriminatedUnion(
    'kind',
    [
      nodeSchemas.all,
      nodeSchemas.any,
      nodeSchemas.atLeast,
      nodeSchemas.signOff,
      nodeSchemas.criterion,
      nodeSchemas.level,
      nodeSchemas.boardMove,
      nodeSchemas.age,
      nodeSchemas.diveList,
      nodeSchemas.venue,
    ],
    { error: `a requirement has a kind, one of ${kinds.join(', ')}` },
  ),
)

const children: z.ZodType<readonly Requirement[]> = z
  .array(requirementSchema)
  .min(1, { error: 'a branch needs at least one requirement under it' })
