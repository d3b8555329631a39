import { phasesOf } from '../../edition/attach'
import { pointerTo } from '../../edition/pointer'
import type { Criterion } from '../../model'
import type { LintProblem, Rule } from '../problem'
import type { Subject } from '../subject'

const attached = ({ curriculum }: Subject): ReadonlySet<string> =>
  new Set([...curriculum.pairs.values()].flatMap((pair) => pair.criteria.map(({ criterion }) => criterion.key)))

function listedInVain({ curriculum }: Subject, criterion: Criterion, index: number): LintProblem[] {
  if (criterion.appliesTo.by !== 'skills') return []
  return criterion.appliesTo.skills.flatMap((key, s): LintProblem[] => {
    const skill = curriculum.skills.get(key)
    if (!skill || phasesOf(skill).includes(criterion.phase)) return []
    const message = `criterion ${criterion.key} lists ${key}, which has no phase "${criterion.phase}"; change the phase or take ${key} off the list`
    return [{ code: 'criterion-without-skill', path: pointerTo('criteria', index, 'appliesTo', 'skills', s), message }]
  })
}

/** Criteria that attach to nothing, and faults that no criterion lists: nobody would ever see them. */
export const attachment: Rule = (subject) => {
  const { document } = subject
  const used = attached(subject)
  const listed = new Set(document.criteria.flatMap((criterion) => criterion.faults))
  return [
    ...document.criteria.flatMap((criterion, index): LintProblem[] => {
      if (used.has(criterion.key)) return listedInVain(subject, criterion, index)
      const message = `criterion ${criterion.key} matches no skill that has a phase "${criterion.phase}"; widen appliesTo, or take it away`
      return [{ code: 'criterion-without-skill', path: pointerTo('criteria', index, 'appliesTo'), message }]
    }),
    ...document.faults.flatMap((fault, index): LintProblem[] => {
      if (listed.has(fault.key)) return []
      const message = `fault ${fault.key} is listed by no criterion; list it where it is seen, or take it away`
      return [{ code: 'fault-unused', path: pointerTo('faults', index), message }]
    }),
  ]
}
