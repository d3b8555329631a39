import type { Pointer } from '../../edition/pointer'
import { pointerTo } from '../../edition/pointer'
import type { Standard } from '../../model'
import type { LintProblem, Rule } from '../problem'
import type { Subject } from '../subject'

/** A standard as it holds somewhere: the programme's own, or that of a pair that changes some of it. */
export interface WrittenStandard {
  readonly standard: Standard
  readonly owner: string
  readonly path: Pointer
  /** The fields that are written at this place. */
  readonly written: ReadonlySet<string>
}

/** The programme's standard, then the merged standard of each pair that changes it. */
export const listStandards = ({ document, pairs }: Subject): WrittenStandard[] => [
  {
    standard: document.standard,
    owner: 'the programme',
    path: pointerTo('standard'),
    written: new Set(Object.keys(document.standard)),
  },
  ...pairs
    .filter(({ pair }) => Object.keys(pair.at.standard).length > 0)
    .map(({ pair, name, path }) => ({
      standard: pair.standard,
      owner: name,
      path: `${path}/standard`,
      written: new Set(Object.keys(pair.at.standard)),
    })),
]

/** True when a place writes any of these fields; what it only takes over is named where it was written. */
export const writes = ({ written }: WrittenStandard, ...fields: readonly (keyof Standard)[]): boolean =>
  fields.some((field) => written.has(field))

/** Standards that no record can reach: more successes than attempts, more days than the window has. */
export const standards: Rule = (subject) =>
  listStandards(subject).flatMap((place): LintProblem[] => {
    const { standard, owner, path } = place
    const refuse = (what: string): LintProblem => ({
      code: 'cannot-be-met',
      path,
      message: `the standard of ${owner} asks for ${what}`,
    })
    return [
      ...(writes(place, 'successes', 'of') && standard.successes > standard.of
        ? [refuse(`${standard.successes} successes in ${standard.of} attempts; ask for fewer`)]
        : []),
      ...(writes(place, 'days', 'withinDays') && standard.days > standard.withinDays
        ? [refuse(`${standard.days} days within ${standard.withinDays}; widen the window`)]
        : []),
      ...(writes(place, 'recheck') && standard.recheck.successes > standard.recheck.of
        ? [refuse(`${standard.recheck.successes} successes in a recheck of ${standard.recheck.of}; ask for fewer`)]
        : []),
    ]
  })
