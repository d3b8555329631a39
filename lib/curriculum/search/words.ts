/** A word of a text in the form in which it is compared, and where it stands. */
export interface Word {
  readonly plain: string
  readonly start: number
  readonly end: number
}

const plainly = (text: string): string => text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase()

/** The words of a text: letters, digits and ½ that stand together, without case and accents. */
export const wordsOf = (text: string): Word[] =>
  [...text.matchAll(/[\p{L}\p{M}\p{N}½]+/gu)].map(({ 0: word, index }) => ({
    plain: plainly(word),
    start: index,
    end: index + word.length,
  }))

/** Words that say nothing by themselves. */
const empty = new Set(['a', 'an', 'and', 'at', 'in', 'is', 'of', 'on', 'or', 'the', 'to', 'with'])
const most = 12

/** What is looked for: its words without empty ones, halves as the curriculum writes them, a dive's letter at its number. */
export function queryWords(query: string): string[] {
  const text = query
    .slice(0, 200)
    .replace(/(\d)(?:\s*[.,]5| 1\/2)(?!\d)/g, '$1½')
    .replace(/\b(\d{3,4})\s+([a-d])\b/gi, '$1$2')
  const words = wordsOf(text).map(({ plain }) => plain)
  const telling = words.filter((word) => !empty.has(word))
  return [...new Set(telling.length > 0 ? telling : words)].slice(0, most)
}

/**
 * Edits between two words: letters put in, left out, changed, or two neighbours swapped (optimal string alignment).
 * Stops at `limit` + 1 when the lengths alone are further apart.
 */
export function editsBetween(a: string, b: string, limit: number): number {
  if (Math.abs(a.length - b.length) > limit) return limit + 1
  let [older, old]: [number[], number[]] = [[], Array.from({ length: b.length + 1 }, (_, index) => index)]
  for (let i = 1; i <= a.length; i += 1) {
    const row = [i]
    for (let j = 1; j <= b.length; j += 1) {
      const change = a[i - 1] === b[j - 1] ? 0 : 1
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]
      row[j] = Math.min(
        (old[j] ?? 0) + 1,
        (row[j - 1] ?? 0) + 1,
        (old[j - 1] ?? 0) + change,
        swapped ? (older[j - 2] ?? 0) + 1 : Number.POSITIVE_INFINITY,
      )
    }
    ;[older, old] = [old, row]
  }
  return old[b.length] ?? limit + 1
}

/** Misspellings that are forgiven: none in short words and numbers, one from four letters, two from eight. */
const forgiven = (word: string): number => {
  if (/\d/.test(word) || word.length < 4) return 0
  return word.length < 8 ? 1 : 2
}

/** A word that is looked for; a misspelling is forgiven only where nothing begins as it is written. */
export interface Wanted {
  readonly word: string
  readonly forgiving: boolean
}

/** How well a word answers one that is looked for: 3 the same, 2 its beginning, 1 misspelt, 0 not at all. */
export function answers({ word: wanted, forgiving }: Wanted, word: string): 0 | 1 | 2 | 3 {
  if (word === wanted) return 3
  if (word.startsWith(wanted) && (wanted.length > 1 || /\d/.test(wanted))) return 2
  const limit = forgiving ? forgiven(wanted) : 0
  return limit > 0 && editsBetween(wanted, word, limit) <= limit ? 1 : 0
}
