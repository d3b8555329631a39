import { notFound } from 'next/navigation'
import { type InvitationState, invitationState, refuseAcceptance } from '@/lib/access/invite'
import { loadActor } from '@/lib/access/session'
import { findInvitation } from '@/lib/access/store/invitations'
import { systemClock } from '@/lib/platform/clock'

export interface InvitedPage {
  readonly token: string
  readonly state: InvitationState
  /** "Sanna Oduya invites you to be head coach of Saltmarsh Diving Club." */
  readonly sentence: string
  readonly programme: string
  /** Whoever is signed in, and why she gains nothing by accepting; null when nobody is. */
  readonly who: { readonly name: string; readonly refusal: string | null } | null
}

const roleWords = {
  assistant: 'an assistant coach at',
  head: 'head coach of',
  reviewer: 'a reviewer of',
  lead: 'the lead of',
} as const

const closedWords: Readonly<Record<Exclude<InvitationState, 'open'>, string>> = {
  accepted: 'This link was used already. If it was not by you, ask whoever sent it for another.',
  withdrawn: 'This link was taken back. Ask whoever sent it.',
  expired: 'This link has run out. Ask whoever sent it for another.',
}

/** What an invitation link says, to anybody who holds it: who invites to what, and nothing else. */
export async function loadInvited(token: string): Promise<InvitedPage> {
  const found = /^[\w-]{43}$/.test(token) ? await findInvitation(token) : null
  if (!found) notFound()
  const state = invitationState(found, systemClock())
  const actor = state === 'open' ? await loadActor() : null
  return {
    token,
    state,
    sentence:
      state === 'open'
        ? `${found.inviter} invites you to be ${roleWords[found.offer.role]} ${found.clubName ?? found.programme.name}.`
        : closedWords[state],
    programme: found.programme.name,
    who: actor && { name: actor.name, refusal: refuseAcceptance(actor, found.offer, found.programme.id) },
  }
}
