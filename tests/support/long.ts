import { z } from 'zod'

const { PLUMBLINE_LONG } = z.object({ PLUMBLINE_LONG: z.enum(['0', '1']).default('0') }).parse(process.env)
const long = PLUMBLINE_LONG === '1'

/** Histories for each law: 2,000 in all as a rule, 20,000 for a night. */
export const lawRuns = { each: long ? 2900 : 290, timeout: long ? 3_600_000 : 120_000 } as const
