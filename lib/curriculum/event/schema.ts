import { z } from 'zod'
import { keySchema } from '../requirement/schema'
import { eventPlaces } from './model'

const whole = (name: string, least: number, most: number) =>
  z
    .int({ error: `${name} is a whole number` })
    .min(least, { error: `${name} is at least ${least}` })
    .max(most, { error: `${name} is at most ${most}` })

const ageSchema = whole('an age', 1, 120).nullable()

/** One part of a list. */
export const eventPartSchema = z.strictObject({
  count: whole('the count of dives', 1, 12),
  distinctFamilies: whole('the count of families', 1, 6),
  difficultyCap: whole('a cap on difficulty, in tenths,', 1, 1000).nullable(),
})

/** An event with its parts, as written. */
export const eventSchema = z.strictObject({
  key: keySchema,
  title: z
    .string({ error: 'the title of an event is text' })
    .trim()
    .min(1, { error: 'the title of an event has words' })
    .max(60, { error: 'the title of an event is at most 60 characters' }),
  season: whole('a season', 1900, 2999),
  ageBand: z.strictObject({ from: ageSchema, to: ageSchema }),
  place: z.enum(eventPlaces, { error: `the place of an event is one of ${eventPlaces.join(', ')}` }),
  parts: z
    .array(eventPartSchema)
    .min(1, { error: 'an event has at least one part' })
    .max(3, { error: 'an event has at most three parts' }),
})
