import { type WaitsFor, writeWaitsFor } from '../assessment/readiness/waits-for'
import type { Figure, Step } from './pathway'

/** Something that steps wait for, with the divers who wait for it and those of them who are held up. */
export interface Wait {
  /** The code by which it is stored and linked to. */
  readonly code: string
  readonly what: WaitsFor
  readonly divers: readonly string[]
  readonly heldUp: readonly string[]
}

/** A diver's step among those that are looked at; a diver may have several. */
export interface AskedStep {
  readonly diver: string
  readonly step: Step
}

/** Who is ready waits for nothing more to be shown; who is stood down waits for that to end. */
export const waiting: readonly Figure[] = ['near', 'held up', 'on the way']

/** What the steps wait for, what holds up most divers first, then what most wait for. A diver counts once for each thing. */
export function countWaits(steps: readonly AskedStep[], counts: (what: WaitsFor) => boolean): Wait[] {
  const found = new Map<string, { what: WaitsFor; divers: Set<string>; heldUp: Set<string> }>()
  for (const { diver, step } of steps) {
    if (!waiting.includes(step.figure)) continue
    for (const what of step.waitsFor) {
      if (!counts(what)) continue
      const code = writeWaitsFor(what)
      const one = found.get(code) ?? { what, divers: new Set(), heldUp: new Set() }
      found.set(code, one)
      one.divers.add(diver)
      if (step.figure === 'held up') one.heldUp.add(diver)
    }
  }
  return [...found]
    .map(([code, { what, divers, heldUp }]) => ({ code, what, divers: [...divers], heldUp: [...heldUp] }))
    .sort(
      (a, b) => b.heldUp.length - a.heldUp.length || b.divers.length - a.divers.length || (a.code < b.code ? -1 : 1),
    )
}
