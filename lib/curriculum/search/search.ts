import type { Curriculum } from '../edition/curriculum'
import { textOfCause } from '../edition/fault-at'
import { placeFacts } from '../place'
import { answers, queryWords, type Wanted, wordsOf } from './words'

/** A text of the curriculum in which words are found; those of weight 0 help to find and are not shown. */
interface Phrase {
  readonly text: string
  readonly weight: number
}

type Kind = 'skill' | 'criterion' | 'fault'

interface Entry {
  readonly kind: Kind
  readonly key: string
  readonly phrases: readonly Phrase[]
}

/** A piece of a phrase: whether it is one of the words looked for. */
export interface Piece {
  readonly text: string
  readonly hit: boolean
}

/** Something that was found, with the phrase that answers best. */
export interface Found {
  readonly kind: Kind
  /** Key of the skill, criterion or fault. */
  readonly key: string
  readonly score: number
  readonly phrase: readonly Piece[]
}

function listEntries({ document }: Curriculum): Entry[] {
  const entry = (kind: Kind, key: string, ...phrases: (readonly [string | null, number])[]): Entry => ({
    kind,
    key,
    phrases: phrases.flatMap(([text, weight]) => (text ? [{ text, weight }] : [])),
  })
  return [
    ...document.skills.map((skill) =>
      entry(
        'skill',
        skill.key,
        [skill.dive, 0],
        [skill.title, 4],
        [skill.summary, 1],
        [skill.family, 0],
        [skill.places.map(({ place }) => placeFacts[place].label).join(', '), 0],
      ),
    ),
    ...document.criteria.map(({ key, title, statement, anchors, phase }) =>
      entry('criterion', key, [title, 4], [statement, 2], ...anchors.map((anchor) => [anchor, 1] as const), [phase, 0]),
    ),
    ...document.faults.map(({ key, seen, causes, corrections, phase }) =>
      entry(
        'fault',
        key,
        [seen, 4],
        ...causes.map((cause) => [textOfCause(cause), 1] as const),
        ...corrections.map(({ text }) => [text, 2] as const),
        [phase, 0],
      ),
    ),
  ]
}

const best = (wanted: Wanted, text: string): number =>
  Math.max(0, ...wordsOf(text).map(({ plain }) => answers(wanted, plain)))

function cut(text: string, wanted: readonly Wanted[]): Piece[] {
  const pieces: Piece[] = []
  let done = 0
  for (const { plain, start, end } of wordsOf(text)) {
    if (!wanted.some((word) => answers(word, plain) > 0)) continue
    if (start > done) pieces.push({ text: text.slice(done, start), hit: false })
    pieces.push({ text: text.slice(start, end), hit: true })
    done = end
  }
  if (done < text.length) pieces.push({ text: text.slice(done), hit: false })
  return pieces
}

/** Every word must be answered somewhere in the entry; the phrase shown answers most of them, best. */
function find({ kind, key, phrases }: Entry, wanted: readonly Wanted[]): Found | null {
  const answered = phrases.map(({ text, weight }) => ({ text, weight, each: wanted.map((word) => best(word, text)) }))
  const perWord = wanted.map((_, index) =>
    Math.max(0, ...answered.map(({ weight, each }) => (each[index] ?? 0) * Math.max(weight, 3))),
  )
  if (perWord.some((value) => value === 0)) return null
  const shown = answered
    .filter(({ weight }) => weight > 0)
    .map((phrase) => ({ ...phrase, sum: phrase.each.reduce((sum, one) => sum + one, 0) * (3 + phrase.weight) }))
    .reduce((first, other) => (other.sum > first.sum ? other : first))
  return {
    kind,
    key,
    score: perWord.reduce((sum, value) => sum + value, 0) + shown.weight,
    phrase: cut(shown.text, wanted),
  }
}

/**
 * Skills, criteria and faults in which every word of the query is found, best first, equal ones in the order of the
 * document. Forgiving: without case and accents, by beginnings, and with a misspelling where nothing begins as a longer word is written. Empty for no words.
 */
export function searchCurriculum(curriculum: Curriculum, query: string): Found[] {
  const words = queryWords(query)
  if (words.length === 0) return []
  const entries = listEntries(curriculum)
  const known = new Set(
    entries.flatMap(({ phrases }) => phrases.flatMap(({ text }) => wordsOf(text))).map(({ plain }) => plain),
  )
  const wanted = words.map((word) => ({ word, forgiving: ![...known].some((one) => one.startsWith(word)) }))
  return entries.flatMap((entry) => find(entry, wanted) ?? []).sort((a, b) => b.score - a.score)
}
