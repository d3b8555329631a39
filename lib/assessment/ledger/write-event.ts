import { canonicalJson } from '../../curriculum/canonical'
import { sha256Hex } from '../../curriculum/digest'
import { type LedgerEvent, ledgerSchemaVersion } from './event'

/** The canonical bytes of an event (RFC 8785), as they are hashed and stored. */
export const writeEvent = (event: LedgerEvent): string =>
  canonicalJson({ schemaVersion: ledgerSchemaVersion(event.kind), ...event })

/** SHA-256 of any canonicalisable value: of an observation, a finding, an item from the deck. Lower-case hex. */
export const digestOf = (value: unknown): string => sha256Hex(canonicalJson(value))

/** A salted commitment to erasable words: what stays when the words and their salt are gone proves nothing and says nothing. */
export const commitTo = (text: string, salt: string): string => sha256Hex(`${salt}\n${text}`)
