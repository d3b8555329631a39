import { pointerTo } from '../../edition/pointer'
import type { LintProblem, Rule } from '../problem'

// Words that say nothing about what is seen; "not" among them, so that a bare denial counts as the same words.
const empty = new Set(
  'a an the and or of to in on at as it is are be by with for from that than then but not no only one both all their its his her he she into out up down off over before after while until'.split(
    ' ',
  ),
)

const telling = (text: string): ReadonlySet<string> =>
  new Set((text.toLowerCase().match(/[\p{L}\p{N}']+/gu) ?? []).filter((word) => !empty.has(word)))

/** The share of the shorter text's telling words that the other has as well, 0 to 1. */
export function sharedWords(one: string, other: string): number {
  const [a, b] = [telling(one), telling(other)]
  const shorter = Math.min(a.size, b.size)
  if (shorter === 0) return one.trim() === other.trim() ? 1 : 0
  return [...a].filter((word) => b.has(word)).length / shorter
}

/** Anchors of which most words are the same: two coaches could not tell the ratings apart. */
export const anchors: Rule = ({ document }) =>
  document.criteria.flatMap((criterion, c) =>
    criterion.anchors.flatMap((anchor, rating) =>
      criterion.anchors.slice(0, rating).flatMap((lower, below): LintProblem[] => {
        if (sharedWords(anchor, lower) <= 0.5) return []
        const message = `criterion ${criterion.key}: the anchors for ${below} and ${rating} share most of their words; let each name another thing that is seen`
        return [{ code: 'anchors-alike', path: pointerTo('criteria', c, 'anchors', rating), message }]
      }),
    ),
  )
