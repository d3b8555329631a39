import type { Tx } from '../../platform/db'

/** Accounts of a club's head coaches today. */
export async function listHeadCoaches(tx: Tx, club: string): Promise<string[]> {
  const rows = await tx.membership.findMany({
    where: { clubId: club, role: 'head', to: null },
    select: { accountId: true },
  })
  return [...new Set(rows.map((row) => row.accountId))]
}
