import type { Offer } from '../../lib/access/invite'
import { invitationDays } from '../../lib/access/invite'
import type { Scope } from '../../lib/access/scope'
import { makeInvitation } from '../../lib/access/store/invitations'

/** Makes an invitation and says its link as a terminal shows it. `address`: where this installation is served. */
export async function sayInvitation(scope: Scope, offer: Offer, label: string): Promise<string> {
  const { token } = await makeInvitation(scope, offer, label, Date.now())
  const address = process.env.NEXTAUTH_URL ?? 'http://127.0.0.1:3000'
  const what = offer.club === null ? `${offer.role} of the programme` : `${offer.role} coach of the club`
  return `${address}/account/invited/${token}\n  invites ${label} to be ${what}; it works once, for ${invitationDays} days, and is not shown again\n`
}
