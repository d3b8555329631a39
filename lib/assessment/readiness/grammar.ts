const words = [
  'no',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
] as const
const ordinals = [
  'first',
  'second',
  'third',
  'fourth',
  'fifth',
  'sixth',
  'seventh',
  'eighth',
  'ninth',
  'tenth',
] as const

/** A whole number as a sentence says it: words up to twelve ("no" for 0), figures above. */
export const countWord = (count: number): string => words[count] ?? String(count)

/** "one clean attempt", "two clean attempts", "no clean attempts"; `many` for what does not take an s. */
export const counted = (count: number, one: string, many = `${one}s`): string =>
  `${countWord(count)} ${count === 1 ? one : many}`

/** 1 → "first"; figures with their ending above tenth ("21st"). */
export function ordinal(position: number): string {
  const word = ordinals[position - 1]
  if (word) return word
  const teen = position % 100 >= 11 && position % 100 <= 13
  return `${position}${teen ? 'th' : (['th', 'st', 'nd', 'rd'][position % 10] ?? 'th')}`
}

/** "a, b and c"; semicolons between items that have commas of their own, as skill titles do. */
export function listed(items: readonly string[], last: 'and' | 'or' = 'and'): string {
  const head = items.slice(0, -1)
  const tail = items.at(-1) ?? ''
  if (head.length === 0) return tail
  const between = head.length > 1 && items.some((item) => item.includes(',')) ? '; ' : ', '
  return `${head.join(between)} ${last} ${tail}`
}

/** A title inside a sentence: its first letter small, unless it is an abbreviation or a number. */
export const midSentence = (title: string): string =>
  /^\p{Lu}(?!\p{Lu})/u.test(title) ? title.charAt(0).toLowerCase() + title.slice(1) : title

/** Text as one sentence: a capital first, single spaces, one full stop last. */
export function sentence(text: string): string {
  const plain = text
    .trim()
    .replace(/\s+/g, ' ')
    .replace(/[.;,]+$/, '')
  return `${plain.replace(/^“?\p{Ll}/u, (start) => start.toUpperCase())}.`
}
