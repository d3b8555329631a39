import type { EditionDocument } from '../model'
import type { LintProblem, Rule } from './problem'
import { anchors } from './rules/anchors'
import { attachment } from './rules/attachment'
import { belts } from './rules/belts'
import { certainty } from './rules/certainty'
import { counts } from './rules/counts'
import { dives } from './rules/dives'
import { duplicates } from './rules/duplicates'
import { events } from './rules/events'
import { expectations } from './rules/expectations'
import { falls } from './rules/falls'
import { faults } from './rules/faults'
import { guarded } from './rules/guarded'
import { impossible } from './rules/impossible'
import { layOff } from './rules/lay-off'
import { measures } from './rules/measures'
import { moves } from './rules/moves'
import { namedLevels } from './rules/named-levels'
import { parents } from './rules/parents'
import { progression } from './rules/progression'
import { rechecks } from './rules/rechecks'
import { references } from './rules/references'
import { standards } from './rules/standards'
import { tree } from './rules/tree'
import { subjectOf } from './subject'

const rules: readonly Rule[] = [
  duplicates,
  references,
  tree,
  impossible,
  namedLevels,
  moves,
  layOff,
  attachment,
  faults,
  anchors,
  expectations,
  measures,
  counts,
  progression,
  falls,
  parents,
  guarded,
  belts,
  standards,
  certainty,
  rechecks,
  events,
  dives,
]

/**
 * Everything that is wrong with a curriculum whose shape is right: empty when it may be
 * published. The document is one that `editionSchema` accepts.
 */
export function lint(document: EditionDocument): LintProblem[] {
  const subject = subjectOf(document)
  return rules.flatMap((rule) => rule(subject))
}
