import { faultAt } from '../../edition/fault-at'
import { pointerTo } from '../../edition/pointer'
import type { Fault } from '../../model'
import type { LintProblem, Rule } from '../problem'
import type { Subject, WrittenPair } from '../subject'

const having = ({ pairs }: Subject, { key }: Fault): readonly WrittenPair[] =>
  pairs.filter(({ pair }) => pair.criteria.some(({ criterion }) => criterion.faults.includes(key)))

/** Causes and corrections for skills that never have the fault: nobody would ever read them. */
function forNobody(fault: Fault, index: number, pairs: readonly WrittenPair[]): LintProblem[] {
  const told = pairs.map(({ pair }) => faultAt(fault, pair))
  const words = [
    ...fault.causes.map((cause, c) => ({
      path: pointerTo('faults', index, 'causes', c),
      read: told.some(({ causes }) => causes.includes(typeof cause === 'string' ? cause : cause.text)),
    })),
    ...fault.corrections.map((correction, c) => ({
      path: pointerTo('faults', index, 'corrections', c),
      read: told.some(({ corrections }) => corrections.includes(correction)),
    })),
  ]
  const message = `fault ${fault.key} says this of skills that never have the fault; widen its match, or take it away`
  return words.flatMap(({ path, read }) => (read ? [] : [{ code: 'fault-words-unread', path, message }]))
}

/** Skills of which a fault has no cause or no correction left. */
function unexplained(fault: Fault, index: number, pairs: readonly WrittenPair[]): LintProblem[] {
  return (['causes', 'corrections'] as const).flatMap((list): LintProblem[] => {
    const without = pairs.find(({ pair }) => faultAt(fault, pair)[list].length === 0)
    if (!without) return []
    const message = `fault ${fault.key} has none of its ${list} for ${without.name}; write one for it, or one for all`
    return [{ code: 'fault-unexplained', path: pointerTo('faults', index, list), message }]
  })
}

/** Each skill that can have a fault is told why and what to do, and nothing is written for none. */
export const faults: Rule = (subject) =>
  subject.document.faults.flatMap((fault, index) => {
    const pairs = having(subject, fault)
    // A fault of no skill is another rule's to name.
    if (pairs.length === 0) return []
    return [...forNobody(fault, index, pairs), ...unexplained(fault, index, pairs)]
  })
