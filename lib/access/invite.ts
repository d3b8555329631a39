import type { Actor, ClubRole, ProgrammeRole } from './actor'
import { canDecide, canPublish } from './can'

/** Days for which an invitation link stays open. */
export const invitationDays = 14

/** What somebody is invited to: a post in a club, or a role in the programme. */
export type Offer =
  | { readonly role: ClubRole; readonly club: string }
  | { readonly role: ProgrammeRole; readonly club: null }

/** The programme lead invites head coaches, reviewers and leads; a head coach invites assistants to her own club. */
export const mayInvite = (actor: Actor, offer: Offer): boolean =>
  offer.role === 'assistant' ? canDecide(actor, offer.club) : canPublish(actor)

/** The instants, in milliseconds of the machine's clock, that say what has become of an invitation. */
export interface InvitationTimes {
  readonly expiresAt: number
  readonly withdrawnAt: number | null
  readonly acceptedAt: number | null
}

/** What has become of an invitation. */
export type InvitationState = 'open' | 'accepted' | 'withdrawn' | 'expired'

/** An invitation is used once; what was used stays used, whatever was done to it later. */
export function invitationState({ expiresAt, withdrawnAt, acceptedAt }: InvitationTimes, now: number): InvitationState {
  if (acceptedAt !== null) return 'accepted'
  if (withdrawnAt !== null) return 'withdrawn'
  return expiresAt <= now ? 'expired' : 'open'
}

/** Why somebody who is signed in gains nothing by accepting, as a sentence; null when she may. A head coach stays one. */
export function refuseAcceptance(actor: Actor, offer: Offer, programme: string): string | null {
  if (actor.programme.id !== programme)
    return 'Your account belongs to another programme. Sign out, and accept with a new one.'
  if (offer.club === null)
    return actor.programmeRoles.includes(offer.role)
      ? 'You have this role already. Leave the link to whom it was meant for.'
      : null
  const post = actor.clubs.find(({ club }) => club === offer.club)
  if (!post) return null
  if (post.role === offer.role) return 'You have this post already. Leave the link to whom it was meant for.'
  return post.role === 'head' ? 'You are head coach of this club: an assistant’s post would take that from you.' : null
}

/** An account that is about to be made by accepting: its id, and its password in the form in which it is stored. */
export interface Newcomer {
  readonly id: string
  readonly email: string
  readonly name: string
  readonly initials: string
  readonly passwordHash: string
}
