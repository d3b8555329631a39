import { targetHref } from '@/app/curriculum/loader'
import { type NodeState, type TreeView, viewTree } from '@/app/curriculum/tree/[family]/loader'
import type { Evaluation } from '@/lib/assessment/readiness/evaluation'
import { listTargets } from '@/lib/assessment/readiness/targets'
import { pairName, type Words } from '@/lib/assessment/readiness/wording'
import type { FamilyDrawing } from '@/lib/curriculum/tree/draw-family'
import type { TreeNode } from '@/lib/curriculum/tree/family-graph'
import { loadDiverNow, type SkillView, toSkill, toTarget } from '../../loader'

export interface DiverTree extends TreeView {
  readonly diver: { readonly name: string; readonly href: string }
  readonly headline: string
  readonly counts: string
}

const marks: Readonly<Record<SkillView['state'], NodeState['mark']>> = {
  held: 'held',
  recognised: 'held',
  'in doubt': 'lapsed',
  lapsed: 'lapsed',
  'to sign': 'to sign',
  open: 'open',
  closed: 'closed',
}

/** A board move or level in the tree: approved stands as held, to review as in doubt, ready waits for the head coach. */
function targetState(evaluation: Evaluation, key: string, words: Words): NodeState {
  const target = listTargets(evaluation.curriculum).find((one) => one === key)
  if (!target) return { mark: 'closed', word: null, because: null }
  const { held, ready, headline } = toTarget(evaluation, target, words)
  if (held === 'to review') return { mark: 'lapsed', word: held, because: headline }
  if (held !== 'no') return { mark: 'held', word: held, because: null }
  return ready
    ? { mark: 'to sign', word: 'ready', because: headline }
    : { mark: 'closed', word: 'not yet', because: headline }
}

/** What the tree brings out unasked: what waits for a signature, is to renew or is open, at the lowest level first. */
function nextIn(drawing: FamilyDrawing, stateOf: (node: TreeNode) => NodeState): TreeNode | undefined {
  const own = drawing.nodes
    .filter(({ node }) => node.kind === 'pair')
    .sort((a, b) => (a.node.pair?.level ?? 0) - (b.node.pair?.level ?? 0) || a.x - b.x)
    .map(({ node }) => node)
  return (
    own.find((node) => stateOf(node).mark === 'to sign') ??
    own.find((node) => stateOf(node).mark === 'lapsed') ??
    own.find((node) => stateOf(node).mark === 'open')
  )
}

const order = ['held', 'recognised', 'in doubt', 'lapsed', 'to sign', 'open', 'closed'] as const

function sayCounts(drawing: FamilyDrawing, stateOf: (node: TreeNode) => NodeState): string {
  const words = drawing.nodes.filter(({ node }) => node.kind === 'pair').map(({ node }) => stateOf(node).word)
  return order
    .map((word) => ({ word, count: words.filter((one) => one === word).length }))
    .filter(({ count }) => count > 0)
    .map(({ word, count }) => `${count} ${word}`)
    .join(' · ')
}

/** A family's tree filled with a diver's state now; not found outside the actor's clubs. */
export async function loadDiverTree(diver: string, family: string, at: string | undefined): Promise<DiverTree> {
  const { desk, evaluation, words } = await loadDiverNow(diver)
  const { id, givenName, familyName } = desk.file
  const known = new Map<string, NodeState>()
  const stateOf = (node: TreeNode): NodeState => {
    const found = known.get(node.key)
    if (found) return found
    const skill = node.pair && toSkill(evaluation, id, node.pair.key, words)
    const state: NodeState = skill
      ? { mark: marks[skill.state], word: skill.state, because: skill.because }
      : targetState(evaluation, node.key, words)
    known.set(node.key, state)
    return state
  }
  const tree = viewTree({
    words,
    family,
    choose: (drawing) => at ?? nextIn(drawing, stateOf)?.key,
    base: `/desk/divers/${id}/tree`,
    hrefOf: (node) => (node.pair ? `/desk/divers/${id}/${encodeURIComponent(node.pair.key)}` : targetHref(node.key)),
    stateOf,
  })
  const next = nextIn(tree.drawing, stateOf)
  return {
    ...tree,
    diver: { name: `${givenName} ${familyName}`, href: `/desk/divers/${id}` },
    headline: next?.pair ? `${pairName(next.pair.key, words)} is ${stateOf(next).word}.` : nothingOpen(tree, givenName),
    counts: sayCounts(tree.drawing, stateOf),
  }
}

const nothingOpen = ({ title }: TreeView, name: string): string =>
  `Nothing in the ${title.toLowerCase()} family waits or is open for ${name}.`
