import type { Pointer } from '../edition/pointer'
import type { Subject } from './subject'

/** Every kind of mistake that the linter names. */
export const lintCodes = [
  'duplicate-key',
  'unknown-key',
  'drill-missing',
  'cycle',
  'unreachable',
  'cannot-be-met',
  'no-level-named',
  'level-mismatch',
  'move-misplaced',
  'reentry-blocked',
  'criterion-without-skill',
  'fault-unused',
  'fault-words-unread',
  'fault-unexplained',
  'drill-ahead',
  'anchors-alike',
  'critical-below-3',
  'expectation-falls',
  'no-critical-criterion',
  'too-many-critical',
  'too-many-criteria',
  'head-first-too-soon',
  'poolside-backwards',
  'dive-before-fall',
  'parent-missing',
  'dive-before-move',
  'safety-unwatched',
  'belt-without-spotter',
  'certainty-out-of-reach',
  'recheck-too-hard',
  'measure-bands',
  'measure-misplaced',
  'distance-unguarded',
  'no-legal-list',
  'dive-impossible-here',
  'dive-misdescribed',
] as const
export type LintCode = (typeof lintCodes)[number]

/** One mistake: `path` is a JSON Pointer into the document, `message` says what, where and what to do. */
export interface LintProblem {
  readonly code: LintCode
  readonly path: Pointer
  readonly message: string
}

/** A rule looks at one edition and names what it finds. */
export type Rule = (subject: Subject) => readonly LintProblem[]
