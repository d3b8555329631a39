import type { Scope } from '../../access/scope'
import type { Tx } from '../../platform/db'

/** Accounts of a club's head coaches today. */
export async function listHeadCoaches(tx: Tx, club: string): Promise<string[]> {
  const rows = await tx.membership.findMany({
    where: { clubId: club, role: 'head', to: null },
    select: { accountId: true },
  })
  return [...new Set(rows.map((row) => row.accountId))]
}

/** Whether the account is a head coach of the club, inside the transaction that writes. */
export async function isHeadOf(tx: Tx, scope: Scope, club: string): Promise<boolean> {
  const posts = await tx.membership.count({ where: { accountId: scope.account, clubId: club, role: 'head', to: null } })
  return posts > 0
}
