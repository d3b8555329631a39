import type { Scope } from '../../access/scope'
import type { Tx } from '../../platform/db'
import type { Outcome } from '../outcome'

/** A refusal; `field` names the form field that it belongs to. */
export const refuse = (code: string, message: string, field?: string): Outcome => ({
  ok: false,
  refusal: field === undefined ? { code, message } : { code, message, field },
})

/** Outside the scope a diver does not exist. */
export const notFound: Outcome = refuse(
  'not found',
  'No diver of your clubs is found there. She may have moved to another club.',
)

/** Whether the account is a head coach of the club, inside the transaction that writes. */
export async function isHeadOf(tx: Tx, scope: Scope, club: string): Promise<boolean> {
  const posts = await tx.membership.count({ where: { accountId: scope.account, clubId: club, role: 'head', to: null } })
  return posts > 0
}
