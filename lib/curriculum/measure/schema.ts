import { z } from 'zod'
import { bandBases, measureFacts, measureInstants, measureNames, measureUnits } from './model'

const bound = z.number({ error: 'the end of a band is a number' })

const bandSchema = z
  .strictObject({ least: bound.optional(), most: bound.optional() }, { error: 'a band has a least, a most, or both' })
  .refine(({ least, most }) => least !== undefined || most !== undefined, {
    error: 'a band has a least, a most, or both',
  })

/** The written form of what may be measured for a criterion. What it means is `AskedMeasure`. */
export const askedMeasureSchema = z
  .strictObject({
    what: z.enum(measureNames, { error: `a measure is one of ${measureNames.join(', ')}` }),
    at: z.enum(measureInstants, { error: `a measure is taken at one of ${measureInstants.join(', ')}` }),
    unit: z.enum(measureUnits, { error: `a unit is one of ${measureUnits.join(', ')}` }),
    bands: z.strictObject(
      { 1: bandSchema, 2: bandSchema, 3: bandSchema, 4: bandSchema },
      { error: 'a measure has four bands, for the ratings 1, 2, 3 and 4' },
    ),
    basis: z.enum(bandBases, { error: `the basis of bands is one of ${bandBases.join(', ')}` }),
    source: z
      .string({ error: 'a source is text' })
      .trim()
      .min(1, { error: 'a source has words' })
      .max(200, { error: 'a source is at most 200 characters' })
      .nullable(),
  })
  .superRefine(({ what, unit, basis, source }, context) => {
    const own = measureFacts[what].unit
    if (unit !== own) context.addIssue({ code: 'custom', path: ['unit'], message: `${what} is stated in ${own}` })
    if ((basis === 'published') !== (source !== null))
      context.addIssue({
        code: 'custom',
        path: ['source'],
        message: 'bands that were published name their source; others name none',
      })
  })
