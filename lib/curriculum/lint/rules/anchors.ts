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
function shared(a: ReadonlySet<string>, b: ReadonlySet<string>): number {
  const shorter = Math.min(a.size, b.size)
  // Two texts that tell nothing tell the same.
  return shorter === 0 ? 1 : [...a].filter((word) => b.has(word)).length / shorter
}

/** Anchors of which most words are the same: two coaches could not tell the ratings apart. */
export const anchors: Rule = ({ document }) =>
  document.criteria.flatMap((criterion, c) => {
    const words = criterion.anchors.map(telling)
    return words.flatMap((anchor, rating) =>
      words.slice(0, rating).flatMap((lower, below): LintProblem[] => {
        if (shared(anchor, lower) <= 0.5) return []
        const message = `criterion ${criterion.key}: the anchors for ${below} and ${rating} share most of their words; let each name another thing that is seen`
        return [{ code: 'anchors-alike', path: pointerTo('criteria', c, 'anchors', rating), message }]
      }),
    )
  })
