import { pairKey } from '../../edition/curriculum'
import { type FaultAt, faultAt, textOfCause } from '../../edition/fault-at'
import { pointerTo } from '../../edition/pointer'
import type { Fault } from '../../model'
import type { LintProblem, Rule } from '../problem'
import { nameOf, type Subject, type WrittenPair } from '../subject'

/** What a skill that can have a fault is told of it. */
interface Told extends WrittenPair {
  readonly at: FaultAt
}

/** The skills that can have each fault, by its key. */
function havingEach({ pairs }: Subject): ReadonlyMap<string, ReadonlySet<WrittenPair>> {
  const having = new Map<string, Set<WrittenPair>>()
  for (const written of pairs)
    for (const { criterion } of written.pair.criteria)
      for (const key of criterion.faults) having.set(key, (having.get(key) ?? new Set()).add(written))
  return having
}

/** Causes and corrections for skills that never have the fault: nobody would ever read them. */
function forNobody(fault: Fault, index: number, told: readonly Told[]): LintProblem[] {
  const words = [
    ...fault.causes.map((cause, c) => ({
      path: pointerTo('faults', index, 'causes', c),
      read: told.some(({ at }) => at.causes.includes(textOfCause(cause))),
    })),
    ...fault.corrections.map((correction, c) => ({
      path: pointerTo('faults', index, 'corrections', c),
      read: told.some(({ at }) => at.corrections.includes(correction)),
    })),
  ]
  const message = `fault ${fault.key} says this of skills that never have the fault; widen its match, or take it away`
  return words.flatMap(({ path, read }) => (read ? [] : [{ code: 'fault-words-unread', path, message }]))
}

/** Skills of which a fault has no cause or no correction left. */
const unexplained = (fault: Fault, index: number, told: readonly Told[]): LintProblem[] =>
  (['causes', 'corrections'] as const).flatMap((list): LintProblem[] => {
    const without = told.find(({ at }) => at[list].length === 0)
    if (!without) return []
    const message = `fault ${fault.key} has none of its ${list} for ${without.name}; write one for it, or one for all`
    return [{ code: 'fault-unexplained', path: pointerTo('faults', index, list), message }]
  })

/** Drills that come after a skill that is sent to them: what mends it must be simpler. */
const ahead = (subject: Subject, fault: Fault, index: number, told: readonly Told[]): LintProblem[] =>
  fault.corrections.flatMap((correction, c): LintProblem[] => {
    const { drill } = correction
    if (!drill || !subject.curriculum.pairs.has(pairKey(drill))) return []
    const before = subject.before(pairKey(drill))
    const early = told.find(({ pair, at }) => before.has(pair.key) && at.corrections.includes(correction))
    if (!early) return []
    const message = `fault ${fault.key} sends ${early.name} on to ${nameOf(drill)}, which comes after it; name a simpler drill, or narrow its match`
    return [{ code: 'drill-ahead', path: pointerTo('faults', index, 'corrections', c, 'drill'), message }]
  })

/** Each skill that can have a fault is told why and what to do, by something simpler, and nothing is written for none. */
export const faults: Rule = (subject) => {
  const having = havingEach(subject)
  return subject.document.faults.flatMap((fault, index) => {
    // A fault of no skill is another rule's to name.
    const told = [...(having.get(fault.key) ?? [])].map((written) => ({ ...written, at: faultAt(fault, written.pair) }))
    if (told.length === 0) return []
    return [...forNobody(fault, index, told), ...unexplained(fault, index, told), ...ahead(subject, fault, index, told)]
  })
}
