import { z } from 'zod'

const { PLUMBLINE_LONG } = z
  .object({
    PLUMBLINE_LONG: z
      .enum(['0', '1'], { error: 'PLUMBLINE_LONG is 1 for the long tests, 0 or unset for the short' })
      .default('0'),
  })
  .parse(process.env)
const long = PLUMBLINE_LONG === '1'

/** How much a test does: the short form with `npm test`, the full one with `npm run test:long`. */
export const effort = (short: number, full: number): number => (long ? full : short)

/** Histories for each law: 2,000 in all as a rule, 20,000 for a night. */
export const lawRuns = { each: effort(290, 2900), timeout: effort(120_000, 3_600_000) } as const
