import type { Correction, FacetMatcher, Fault } from '../model'
import { facetsOfSkill, matches } from './attach'
import type { Pair } from './curriculum'

/** A fault as one pair has it. */
export interface FaultAt extends Omit<Fault, 'causes'> {
  readonly causes: readonly string[]
  readonly corrections: readonly Correction[]
}

/** What of a fault is for a pair: a back dive is not told how a run goes astray. */
export function faultAt(fault: Fault, { skill, at }: Pick<Pair, 'skill' | 'at'>): FaultAt {
  const fits = (match: FacetMatcher | undefined): boolean =>
    !match || matches(match, skill, facetsOfSkill(skill), at.place)
  return {
    ...fault,
    causes: fault.causes.flatMap((cause) => {
      if (typeof cause === 'string') return cause
      return fits(cause.match) ? cause.text : []
    }),
    corrections: fault.corrections.filter(({ match }) => fits(match)),
  }
}
