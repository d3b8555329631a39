import type { Scope } from '../../access/scope'
import { readEdition } from '../../curriculum/edition/publish'
import { insertEdition, type PublishedEdition } from '../../curriculum/store/publish'
import { asAccount } from '../../platform/db'
import { appendLedger } from './ledger'

export type Published =
  | ({ readonly ok: true } & PublishedEdition)
  | { readonly ok: false; readonly problems: readonly { readonly path: string; readonly message: string }[] }

/** Publishes a curriculum document: validated, canonicalised, hashed, numbered, and told to the ledger. For the lead. */
export function publishEdition(scope: Scope, document: unknown): Promise<Published> {
  const edition = readEdition(document)
  if (!edition.ok) return Promise.resolve({ ok: false, problems: edition.problems })
  return asAccount(scope.account, async (tx) => {
    const published = await insertEdition(tx, scope, edition)
    await appendLedger(tx, scope, {
      kind: 'edition published',
      edition: published.hash,
      number: published.number,
      by: scope.account,
    })
    return { ok: true, ...published }
  })
}
