import canonicalize from 'canonicalize'

/** A value or text that has no canonical form; `path` is a JSON Pointer (RFC 6901) to the place, empty for the whole. */
export class NotCanonical extends Error {
  override readonly name = 'NotCanonical'
  constructor(
    readonly path: string,
    readonly what: string,
  ) {
    super(`${path === '' ? 'the document' : path}: ${what}`)
  }
}

const step = (path: string, key: string | number): string =>
  `${path}/${String(key).replaceAll('~', '~0').replaceAll('/', '~1')}`

const brokenText = 'half of a surrogate pair is not a character'

// With the u flag a whole pair is one character, so only half of one matches.
const isBroken = (text: string): boolean => /\p{Surrogate}/u.test(text)

const isPlain = (value: object): boolean =>
  Array.isArray(value) || Object.getPrototypeOf(value) === Object.prototype || Object.getPrototypeOf(value) === null

/** What keeps a value out of JSON, its children apart; null when nothing does. */
function problemOf(value: unknown): string | null {
  if (value === null || typeof value === 'boolean') return null
  if (typeof value === 'string') return isBroken(value) ? brokenText : null
  if (typeof value === 'number') return Number.isFinite(value) ? null : `${value} is not a number that JSON can write`
  if (typeof value !== 'object') return `${typeof value} is not a JSON value; leave it out or write null`
  return isPlain(value) ? null : 'only plain objects are JSON; write a date, a map and the like as text or as a list'
}

function refuseWhatIsNotJson(value: unknown, path: string, above: readonly object[]): void {
  const problem = problemOf(value)
  if (problem) throw new NotCanonical(path, problem)
  if (typeof value !== 'object' || value === null) return
  if (above.includes(value)) throw new NotCanonical(path, 'the value contains itself')
  // The iterator of an array, unlike Object.entries, does not pass over its holes.
  for (const [key, item] of Array.isArray(value) ? value.entries() : Object.entries(value)) {
    if (typeof key === 'string' && isBroken(key)) throw new NotCanonical(path, `in a key, ${brokenText}`)
    refuseWhatIsNotJson(item, step(path, key), [...above, value])
  }
}

/**
 * The canonical JSON text of a value (RFC 8785): sorted keys, no spaces, numbers as ECMAScript writes them. Its UTF-8 bytes
 * are what is hashed and signed. Throws NotCanonical for what JSON cannot hold (undefined, NaN, functions, dates, lone
 * surrogates, cycles), where JSON.stringify would drop or change it.
 */
export function canonicalJson(value: unknown): string {
  refuseWhatIsNotJson(value, '', [])
  const text = canonicalize(value)
  if (text === undefined) throw new NotCanonical('', 'the value has no canonical form')
  return text
}
