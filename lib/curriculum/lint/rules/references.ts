import type { Curriculum } from '../../edition/curriculum'
import { pairKey } from '../../edition/curriculum'
import type { Pointer } from '../../edition/pointer'
import { pointerTo } from '../../edition/pointer'
import type { Place } from '../../place'
import type { Branch, Holding, Requirement, RequirementReader } from '../../requirement/model'
import { readRequirement } from '../../requirement/model'
import { listNodes } from '../../requirement/references'
import type { LintProblem, Rule } from '../problem'
import type { Subject } from '../subject'
import { nameOf } from '../subject'

/** Where a name is used, and by whom. */
interface Use {
  readonly curriculum: Curriculum
  readonly by: string
  readonly path: Pointer
}

const unknown = (use: Use, what: string): LintProblem[] => [
  { code: 'unknown-key', path: use.path, message: `${use.by} names ${what}; mend the name or add what it names` },
]
const at = (use: Use, ...steps: PropertyKey[]): Use => ({ ...use, path: use.path + pointerTo(...steps) })

/** Says what is missing of a pair: the skill, or the place at which it is taught; null when both are there. */
function missingPair({ curriculum }: Use, holding: Holding): string | null {
  if (!curriculum.skills.has(holding.skill)) return `a skill ${holding.skill} that this edition does not have`
  if (!curriculum.pairs.has(pairKey(holding))) return `${nameOf(holding)}, where this edition does not teach it`
  return null
}

function pair(use: Use, holding: Holding): LintProblem[] {
  const missing = missingPair(use, holding)
  return missing === null ? [] : unknown(at(use, use.curriculum.skills.has(holding.skill) ? 'place' : 'skill'), missing)
}

const level = (use: Use, key: string): LintProblem[] =>
  use.curriculum.levelIndex(key) >= 0 ? [] : unknown(use, `a level ${key} that this edition does not have`)

const none = (): LintProblem[] => []
const branch = (_: Branch): LintProblem[] => []

const named: RequirementReader<LintProblem[], Use> = {
  all: branch,
  any: branch,
  atLeast: branch,
  signOff: (leaf, use) => [...pair(use, leaf), ...(leaf.atLevel === undefined ? [] : level(use, leaf.atLevel))],
  criterion: (leaf, use) => [
    ...(use.curriculum.criteria.has(leaf.criterion)
      ? []
      : unknown(use, `a criterion ${leaf.criterion} that this edition does not have`)),
    ...leaf.at.flatMap((holding, index) => pair(at(use, 'at', index), holding)),
  ],
  level: (leaf, use) => level(use, leaf.level),
  boardMove: (leaf, use) =>
    use.curriculum.boardMove(leaf.family, leaf.to)
      ? []
      : unknown(use, `a board move ${leaf.family} to ${leaf.to} that this edition does not have`),
  age: none,
  diveList: (leaf, use) =>
    use.curriculum.events.has(leaf.event)
      ? []
      : unknown(at(use, 'event'), `an event ${leaf.event} that this edition does not have`),
  venue: none,
}

const inRequirement = (requirement: Requirement, use: Use): LintProblem[] =>
  listNodes(requirement, use.path).flatMap(({ node, path }) => readRequirement(named, node, { ...use, path }))

function listedSkill(use: Use, skill: string, places: readonly Place[] | undefined): LintProblem[] {
  const found = use.curriculum.skills.get(skill)
  if (!found) return unknown(use, `a skill ${skill} that this edition does not have`)
  if (!places || found.places.some(({ place }) => places.includes(place))) return []
  return unknown(use, `${skill} only at places where this edition does not teach it`)
}

function inCriteria({ document, curriculum }: Subject): LintProblem[] {
  return document.criteria.flatMap((criterion, c) => {
    const use: Use = { curriculum, by: `criterion ${criterion.key}`, path: pointerTo('criteria', c) }
    const { appliesTo } = criterion
    return [
      ...criterion.expects.flatMap((step, index) => level(at(use, 'expects', index, 'level'), step.level)),
      ...(appliesTo.by === 'skills'
        ? appliesTo.skills.flatMap((skill, index) =>
            listedSkill(at(use, 'appliesTo', 'skills', index), skill, appliesTo.places),
          )
        : []),
      ...criterion.faults.flatMap((fault, index) =>
        curriculum.faults.has(fault)
          ? []
          : unknown(at(use, 'faults', index), `a fault ${fault} that this edition does not have`),
      ),
    ]
  })
}

function inDrills({ document, curriculum }: Subject): LintProblem[] {
  return document.faults.flatMap((fault, f) =>
    fault.corrections.flatMap(({ drill }, c): LintProblem[] => {
      const path = pointerTo('faults', f, 'corrections', c, 'drill')
      const missing = drill && missingPair({ curriculum, by: '', path }, drill)
      if (!missing) return []
      const message = `fault ${fault.key} sends the diver to ${missing}; name a drill of the tree`
      return [{ code: 'drill-missing', path, message }]
    }),
  )
}

/** Keys that lead nowhere, wherever they stand. */
export const references: Rule = (subject) => {
  const { document, curriculum } = subject
  return [
    ...subject.pairs.flatMap(({ pair: { at: written }, name, path }) =>
      level({ curriculum, by: name, path: `${path}/level` }, written.level),
    ),
    ...subject.requirements.flatMap(({ of, owner, path, requirement }) =>
      inRequirement(requirement, {
        curriculum,
        by: of === 'prerequisite' ? `the prerequisite of ${owner}` : owner,
        path,
      }),
    ),
    ...inCriteria(subject),
    ...inDrills(subject),
    ...document.layOff.flatMap((rule, r) =>
      rule.reentry.flatMap((holding, index) =>
        pair(
          { curriculum, by: `the lay-off rule for ${rule.place}`, path: pointerTo('layOff', r, 'reentry', index) },
          holding,
        ),
      ),
    ),
    ...Object.entries(document.levelMap).flatMap(([old, now]) =>
      level({ curriculum, by: `the level map, for ${old},`, path: pointerTo('levelMap', old) }, now),
    ),
  ]
}
