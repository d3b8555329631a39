import { type PairKey, pairKey } from '../../curriculum/edition/curriculum'
import type { RequirementReader, VenueFeature } from '../../curriculum/requirement/model'
import { readRequirement } from '../../curriculum/requirement/model'
import type { TargetKey } from '../record'
import { bindingLeaves } from './explain'
import type { Block, Reason, TargetFinding } from './finding'

/** What a target waits for, as far as lists and counts need it; the finding says the rest. */
export type WaitsFor =
  /** A critical criterion that fell short lately at a pair. */
  | { readonly kind: 'shortfall'; readonly pair: PairKey; readonly criterion: string }
  /** A pair to be shown or signed. */
  | { readonly kind: 'pair'; readonly pair: PairKey }
  /** A criterion to be rated well more often, at any of several pairs. */
  | { readonly kind: 'criterion'; readonly criterion: string }
  /** A level or board move to be decided first, or reviewed. */
  | { readonly kind: 'decision'; readonly target: TargetKey }
  /** A legal dive list for an event. */
  | { readonly kind: 'list'; readonly event: string }
  | { readonly kind: 'venue'; readonly feature: VenueFeature }
  | { readonly kind: 'age' }
  /** Something that stands against it whatever the numbers say. */
  | { readonly kind: 'block'; readonly block: Block['kind'] }

const none = (): WaitsFor[] => []

function ofSignOff(pair: PairKey, reason: Reason): WaitsFor {
  if (reason.code === 'standing shortfall') return { kind: 'shortfall', pair, criterion: reason.shortfall.criterion }
  if (reason.code !== 'in doubt') return { kind: 'pair', pair }
  const { doubt } = reason
  if (doubt.kind === 'shortfall') return { kind: 'shortfall', pair, criterion: doubt.shortfall.criterion }
  if (doubt.kind === 'withdrawn below') return { kind: 'decision', target: doubt.target }
  return { kind: 'pair', pair: doubt.kind === 'below' ? doubt.pair : pair }
}

const reader: RequirementReader<WaitsFor[], Reason> = {
  all: none,
  any: none,
  atLeast: none,
  signOff: (leaf, reason) => [ofSignOff(pairKey(leaf), reason)],
  criterion: ({ criterion }) => [{ kind: 'criterion', criterion }],
  level: ({ level }) => [{ kind: 'decision', target: `level:${level}` }],
  boardMove: ({ family, to }) => [{ kind: 'decision', target: `move:${family}:${to}` }],
  age: () => [{ kind: 'age' }],
  diveList: ({ event }) => [{ kind: 'list', event }],
  venue: ({ feature }) => [{ kind: 'venue', feature }],
}

/** What a target waits for, blocks first, then its binding leaves that are not met, in reading order; each once. */
export function waitsFor({ finding, blocks }: TargetFinding): WaitsFor[] {
  const leaves = bindingLeaves(finding).filter(({ status }) => status !== 'met')
  const all = [
    ...blocks.map((block): WaitsFor => ({ kind: 'block', block: block.kind })),
    ...leaves.flatMap(({ node, reason }) => readRequirement(reader, node, reason)),
  ]
  return [...new Map(all.map((one) => [writeWaitsFor(one), one])).values()]
}

/** One of them as a short code, which can be stored, counted and read back: `shortfall 101C@1m hands-locked`. */
export function writeWaitsFor(one: WaitsFor): string {
  switch (one.kind) {
    case 'shortfall':
      return `shortfall ${one.pair} ${one.criterion}`
    case 'pair':
      return `pair ${one.pair}`
    case 'criterion':
      return `criterion ${one.criterion}`
    case 'decision':
      return `decision ${one.target}`
    case 'list':
      return `list ${one.event}`
    case 'venue':
      return `venue ${one.feature}`
    case 'age':
      return 'age'
    case 'block':
      return `block ${one.block}`
  }
}

/** Reads a code back. Throws RangeError for what `writeWaitsFor` never wrote. */
export function readWaitsFor(code: string): WaitsFor {
  const [kind, what = '', criterion = ''] = code.split(' ')
  switch (kind) {
    case 'shortfall':
      return { kind, pair: what as PairKey, criterion }
    case 'pair':
      return { kind, pair: what as PairKey }
    case 'criterion':
      return { kind, criterion: what }
    case 'decision':
      return { kind, target: what as TargetKey }
    case 'list':
      return { kind, event: what }
    case 'venue':
      return { kind, feature: what as VenueFeature }
    case 'age':
      return { kind }
    case 'block':
      return { kind, block: what as Block['kind'] }
    default:
      throw new RangeError(`"${code}" says nothing that a target waits for`)
  }
}
