import { v7 as uuidv7 } from 'uuid'
import type { Scope } from '../../access/scope'
import type { Tx } from '../../platform/db'
import type { EditionDocument } from '../model'

export interface PublishedEdition {
  readonly number: number
  readonly hash: string
}

/** Appends an edition under the next number. `canonical` is the RFC 8785 form that `hash` is the SHA-256 of. */
export async function insertEdition(
  tx: Tx,
  scope: Scope,
  edition: { readonly document: EditionDocument; readonly hash: string; readonly canonical: string },
): Promise<PublishedEdition> {
  const last = await tx.edition.aggregate({ where: { programmeId: scope.programme }, _max: { number: true } })
  const number = (last._max.number ?? 0) + 1
  await tx.edition.create({
    data: {
      id: uuidv7(),
      programmeId: scope.programme,
      number,
      hash: edition.hash,
      document: edition.canonical,
      publishedAt: new Date(scope.at),
      publishedBy: scope.account,
    },
  })
  return { number, hash: edition.hash }
}
