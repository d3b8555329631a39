import type { Cause, Correction, FacetMatcher, Fault } from '../model'
import { facetsOfSkill, matches } from './attach'
import type { Curriculum, Pair } from './curriculum'

/** A fault as one pair has it. */
export interface FaultAt extends Omit<Fault, 'causes'> {
  readonly causes: readonly string[]
  readonly corrections: readonly Correction[]
}

/** The words of a cause. */
export const textOfCause = (cause: Cause): string => (typeof cause === 'string' ? cause : cause.text)

/** What of a fault is for a pair: a back dive is not told how a run goes astray. */
export function faultAt(fault: Fault, { skill, at }: Pick<Pair, 'skill' | 'at'>): FaultAt {
  const fits = (match: FacetMatcher | undefined): boolean =>
    !match || matches(match, skill, facetsOfSkill(skill), at.place)
  return {
    ...fault,
    causes: fault.causes.filter((cause) => typeof cause === 'string' || fits(cause.match)).map(textOfCause),
    corrections: fault.corrections.filter(({ match }) => fits(match)),
  }
}

/** Faults by their keys as a pair has them, in the order of the keys; a key that the edition has not is left out. */
export const faultsAt = ({ faults }: Curriculum, pair: Pair, keys: readonly string[]): FaultAt[] =>
  keys.flatMap((key) => {
    const fault = faults.get(key)
    return fault ? faultAt(fault, pair) : []
  })
