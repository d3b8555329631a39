import { canonicalJson, NotCanonical } from '../canonical'
import { sha256Hex } from '../digest'
import type { EditionDocument } from '../model'
import { editionSchema } from '../schema'
import type { Pointer } from './pointer'
import { pointerTo } from './pointer'

/** What is wrong with a document, and where: `path` is a JSON Pointer into it. */
export interface EditionProblem {
  readonly path: Pointer
  readonly message: string
}

/** The document with its canonical form and hash, or every problem with its place. */
export type EditionReading =
  | {
      readonly ok: true
      readonly document: EditionDocument
      /** SHA-256 of `canonical`, lower-case hex: the edition's name. */
      readonly hash: string
      /** RFC 8785 form: the bytes that are hashed, stored and published. */
      readonly canonical: string
    }
  | { readonly ok: false; readonly problems: readonly EditionProblem[] }

const refused = (path: Pointer, message: string): EditionReading => ({ ok: false, problems: [{ path, message }] })

/** The schema version this reader reads. A later one takes its own reader; this one stays. */
export const schemaVersion = 1

/**
 * Reads a value as an edition: shape, canonical form and hash. Every problem of shape is answered with its place.
 * Whether the curriculum makes sense is the linter's question.
 */
export function readEdition(value: unknown): EditionReading {
  if (typeof value !== 'object' || value === null || Array.isArray(value))
    return refused('', 'an edition is one JSON object')
  const version = 'schemaVersion' in value ? value.schemaVersion : undefined
  if (version === undefined)
    return refused('/schemaVersion', `the document does not say its schemaVersion; write ${schemaVersion}`)
  if (version !== schemaVersion)
    return refused(
      '/schemaVersion',
      `this program reads schemaVersion ${schemaVersion}, not ${JSON.stringify(version)}; open it with the program that wrote it`,
    )
  const parsed = editionSchema.safeParse(value)
  if (!parsed.success)
    return {
      ok: false,
      problems: parsed.error.issues.map((issue) => ({ path: pointerTo(...issue.path), message: issue.message })),
    }
  try {
    const canonical = canonicalJson(parsed.data)
    return { ok: true, document: parsed.data, hash: sha256Hex(canonical), canonical }
  } catch (error) {
    if (error instanceof NotCanonical) return refused(error.path, error.what)
    throw error
  }
}
