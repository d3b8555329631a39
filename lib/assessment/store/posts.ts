import type { Newcomer } from '../../access/invite'
import type { Scope } from '../../access/scope'
import { asAccount } from '../../platform/db'
import { appendLedger } from './ledger'

type Accepted = { readonly ok: true } | { readonly ok: false; readonly because: 'closed' | 'address taken' }

interface AcceptedRow {
  readonly result: 'accepted' | 'closed' | 'address taken'
  readonly role: string
  readonly clubId: string | null
  readonly invitedBy: string
  readonly ended: string | null
}

/**
 * Uses an invitation up for the scope's account, which is made first where a newcomer is given, and writes the change of
 * role into the ledger. Of two who open one link at once, one gets the post.
 */
export function acceptInvitation(scope: Scope, hash: string, newcomer: Newcomer | null): Promise<Accepted> {
  return asAccount(scope.account, async (tx) => {
    const { email = null, name = null, initials = null, passwordHash = null } = newcomer ?? {}
    const rows = await tx.$queryRaw<AcceptedRow[]>`SELECT * FROM accept_invitation(${hash}, ${email}, ${name},
      ${initials}, ${passwordHash}, ${new Date(scope.at)})`
    const row = rows[0]
    if (row?.result !== 'accepted')
      return { ok: false, because: row?.result === 'address taken' ? row.result : 'closed' }
    const about = { kind: 'role changed', account: scope.account, club: row.clubId, by: row.invitedBy } as const
    if (row.ended) await appendLedger(tx, scope, { ...about, role: row.ended, change: 'ended' })
    await appendLedger(tx, scope, { ...about, role: row.role, change: 'given' })
    return { ok: true }
  })
}

/** Ends a post, today; false when this account has no such post to end. The ledger tells it. */
export function endPost(scope: Scope, post: string, systemNow: number): Promise<boolean> {
  return asAccount(scope.account, async (tx) => {
    const row = await tx.membership.findFirst({ where: { id: post, programmeId: scope.programme, to: null } })
    if (!row) return false
    // Rights are read by the machine's clock, the record by the programme's: the earlier one ends it by both.
    const to = new Date(Math.min(scope.at, systemNow))
    const { count } = await tx.membership.updateMany({ where: { id: post, to: null }, data: { to } })
    if (count === 0) return false
    await appendLedger(tx, scope, {
      kind: 'role changed',
      account: row.accountId,
      club: row.clubId,
      role: row.role,
      change: 'ended',
      by: scope.account,
    })
    return true
  })
}
