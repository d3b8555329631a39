import type { Consent } from '../../../generated/prisma/client'
import type { Tx } from '../../platform/db'
import { type ConsentFact, type Consents, consentsOf, type Purpose, type Reach } from '../consent'

export const toConsentFact = (row: Consent): ConsentFact => ({
  id: row.id,
  purpose: row.purpose as Purpose,
  given: row.given,
  recordedAt: row.recordedAt.getTime(),
  reach: row.reach as Reach | null,
})

/** How the consents of some divers stand, in one query; of a diver without any, that none was recorded. */
export async function listConsents(tx: Tx, divers: readonly string[]): Promise<(diver: string) => Consents> {
  const rows = await tx.consent.findMany({ where: { diverId: { in: [...divers] } } })
  return (diver) => consentsOf(rows.filter((row) => row.diverId === diver).map(toConsentFact))
}
