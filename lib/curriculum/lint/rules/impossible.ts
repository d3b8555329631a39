import type { Curriculum } from '../../edition/curriculum'
import { pairKey } from '../../edition/curriculum'
import type { Pointer } from '../../edition/pointer'
import { pointerTo } from '../../edition/pointer'
import type { RequirementReader } from '../../requirement/model'
import { readRequirement } from '../../requirement/model'
import { listNodes } from '../../requirement/references'
import type { LintProblem, Rule } from '../problem'
import { nameOf } from '../subject'

interface Where {
  readonly curriculum: Curriculum
  readonly owner: string
  readonly path: Pointer
}

const refuse = ({ owner, path }: Where, what: string, ...steps: PropertyKey[]): LintProblem[] => [
  { code: 'cannot-be-met', path: path + pointerTo(...steps), message: `nobody can meet what ${owner} asks: ${what}` },
]
const fine = (): LintProblem[] => []

const asked: RequirementReader<LintProblem[], Where> = {
  all: fine,
  any: fine,
  atLeast: (node, where) =>
    node.n <= node.of.length
      ? []
      : refuse(where, `${node.n} of only ${node.of.length}; lower the number or add to the list`, 'n'),
  signOff: fine,
  criterion: (leaf, where) => [
    ...(leaf.times <= leaf.of
      ? []
      : refuse(where, `${leaf.criterion} ${leaf.times} times in the last ${leaf.of}; ask for fewer`, 'times')),
    ...leaf.at.flatMap((at, index) => {
      const pair = where.curriculum.pairs.get(pairKey(at))
      // A pair or criterion that does not exist is named by the rule on references.
      if (!pair || !where.curriculum.criteria.has(leaf.criterion)) return []
      if (pair.criteria.some((attached) => attached.criterion.key === leaf.criterion)) return []
      return refuse(
        where,
        `${leaf.criterion} is not rated in ${nameOf(at)}; name another criterion or skill`,
        'at',
        index,
      )
    }),
  ],
  level: fine,
  boardMove: fine,
  age: (leaf, where) =>
    (leaf.min ?? 0) <= (leaf.max ?? Number.POSITIVE_INFINITY)
      ? []
      : refuse(where, `an age of at least ${leaf.min} and at most ${leaf.max}; swap them or drop one`),
  // Whether any list is legal is asked of the event itself.
  diveList: fine,
  venue: fine,
}

/** Requirements that no record can meet, whatever the diver does. */
export const impossible: Rule = ({ curriculum, requirements }) =>
  requirements.flatMap(({ owner, path: root, requirement }) =>
    listNodes(requirement, root).flatMap(({ node, path }) => readRequirement(asked, node, { curriculum, owner, path })),
  )
