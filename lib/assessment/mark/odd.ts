import type { Mark, MarkKey } from './mark'

/** What is odd about a coach's marks in a moment. Odd marks are kept, since the next mark may be the one that mends them. */
export type Oddity =
  | { readonly kind: 'order'; readonly first: Mark; readonly second: Mark }
  | { readonly kind: 'outside'; readonly mark: Mark; readonly side: 'before' | 'after' }
  | { readonly kind: 'frame unknown'; readonly mark: Mark }

/** The range of a moment in milliseconds; `endMs` null plays to the end of the film. */
export interface MarkRange {
  readonly startMs: number
  readonly endMs: number | null
}

/** Marks that must follow each other in the film, as pairs: each phase with the next one marked, the highest point within the flight. */
function pairsOf(marks: ReadonlyMap<MarkKey, Mark>, keys: readonly MarkKey[]): [Mark, Mark][] {
  const inOrder = keys.flatMap((key) => (key === 'highest point' ? [] : (marks.get(key) ?? [])))
  const pairs = inOrder.slice(1).flatMap((second, index): [Mark, Mark][] => {
    const first = inOrder[index]
    return first ? [[first, second]] : []
  })
  const [leaves, top, meets] = [marks.get('flight'), marks.get('highest point'), marks.get('entry')]
  if (leaves && top) pairs.push([leaves, top])
  if (top && meets) pairs.push([top, meets])
  return pairs
}

/** What is odd about the marks of one coach, in the order of the keys. */
export function oddities(marks: readonly Mark[], keys: readonly MarkKey[], range: MarkRange): Oddity[] {
  const byKey = new Map(marks.map((mark) => [mark.key, mark]))
  const order = pairsOf(byKey, keys).filter(([first, second]) => first.atMs >= second.atMs)
  const outside = keys.flatMap((key): Oddity[] => {
    const mark = byKey.get(key)
    if (!mark) return []
    if (mark.atMs < range.startMs) return [{ kind: 'outside', mark, side: 'before' }]
    return range.endMs !== null && mark.atMs >= range.endMs ? [{ kind: 'outside', mark, side: 'after' }] : []
  })
  return [
    ...order.map(([first, second]): Oddity => ({ kind: 'order', first, second })),
    ...outside,
    ...marks.filter(({ frameUs }) => frameUs === null).map((mark): Oddity => ({ kind: 'frame unknown', mark })),
  ]
}
