import { z } from 'zod'
import { slots, takenKinds, uprights } from './taken'

const place = z.object({ x: z.number().min(-100_000).max(100_000), y: z.number().min(-100_000).max(100_000) })
const frame = z.object({
  atMs: z.int().min(0).max(86_400_000),
  frameUs: z.int().min(1_000).max(1_000_000).nullable(),
  width: z.int().min(16).max(16_384),
  height: z.int().min(16).max(16_384),
})

/** Points on frames as they come from a browser or a row: numbers that can be, and nothing else. */
export const onFramesSchema = z.object({
  kind: z.enum(takenKinds).exclude(['flight']),
  frames: z.array(frame).min(1).max(2),
  points: z.partialRecord(z.enum(slots), place),
  upright: z.enum(uprights),
  down: z.boolean(),
  metres: z.number().nullable(),
  pixel: z.number().min(0.25).max(40),
})

const marked = frame.pick({ atMs: true, frameUs: true })
const drop = z.object({ value: z.number(), sd: z.number() })

/** A flight as a browser asks for it: its times are the coach's own marks, which the server reads itself. */
export const flightAskSchema = z.object({ kind: z.literal('flight'), drop })

/** A measure as it was kept. */
export const takenSchema = z.union([
  onFramesSchema,
  z.object({ kind: z.literal('flight'), leaves: marked, meets: marked, top: marked.nullable(), drop }),
])
