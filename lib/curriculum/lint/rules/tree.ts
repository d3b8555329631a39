import type { Curriculum } from '../../edition/curriculum'
import { listNodes } from '../../requirement/references'
import { listCycles } from '../../tree/cycles'
import { canMeet, reachable } from '../../tree/reach'
import type { TreeKey, TreeTarget } from '../../tree/target'
import { listTargets } from '../../tree/target'
import type { LintProblem, Rule } from '../problem'

const said = (key: TreeKey): string =>
  key
    .replace(/^level:/, 'level ')
    .replace(/^move:(.*):(.*)$/, 'board move $1 to $2')
    .replace('@', ' at ')

function circle(walk: readonly TreeTarget[]): LintProblem[] {
  const [first] = walk
  if (!first) return []
  const way = [...walk, first].map((target) => said(target.key)).join(' → ')
  const message = `these wait for each other: ${way}; take one of the requirements away`
  return [{ code: 'cycle', path: first.path, message }]
}

/** The first leaf that cannot be had, in words. */
function waitsFor(curriculum: Curriculum, target: TreeTarget, keys: ReadonlySet<TreeKey>): string {
  const leaves = target.requirement ? listNodes(target.requirement) : []
  const blocked = leaves.find(
    ({ node }) => !('of' in node && Array.isArray(node.of)) && !canMeet(node, { curriculum, keys }),
  )
  if (!blocked) return 'more than its branches hold'
  const { node } = blocked
  if (node.kind === 'signOff') return `${node.skill} at ${node.place}`
  if (node.kind === 'criterion') return `ratings of ${node.criterion}`
  if (node.kind === 'level') return `level ${node.level}`
  if (node.kind === 'boardMove') return `the board move ${node.family} to ${node.to}`
  if (node.kind === 'diveList') return `a legal list for ${node.event}`
  return `a condition on ${node.kind}`
}

/** Circles among prerequisites, levels and moves, and what nobody can reach for whatever cause. */
export const tree: Rule = ({ curriculum }) => {
  const keys = reachable(curriculum)
  return [
    ...listCycles(curriculum).flatMap(circle),
    ...listTargets(curriculum)
      .filter((target) => !keys.has(target.key))
      .map((target): LintProblem => {
        const wanted = waitsFor(curriculum, target, keys)
        const message = `nobody can reach ${said(target.key)}: it waits for ${wanted}, which cannot be had; mend that first`
        return { code: 'unreachable', path: target.path, message }
      }),
  ]
}
