import type { Actor } from '@/lib/access/actor'
import { canCoach, canDecide, canPublish, canReview } from '@/lib/access/can'
import { requireActor } from '@/lib/access/session'

/** What stands at the head of every gated page. */
export interface PageFrame {
  readonly who: string
  readonly where: string
  readonly ways: readonly { readonly href: string; readonly label: string }[]
}

function listWays(actor: Actor): PageFrame['ways'] {
  return [
    ...(canCoach(actor) ? [{ href: '/deck', label: 'Deck' }] : []),
    ...(canDecide(actor) ? [{ href: '/desk/queue', label: 'To decide' }] : []),
    ...(canCoach(actor) || canPublish(actor) ? [{ href: '/desk/video', label: 'To look at' }] : []),
    ...(canCoach(actor) || canReview(actor) ? [{ href: '/desk/divers', label: 'Divers' }] : []),
    ...(canDecide(actor) ? [{ href: '/desk/squads', label: 'Squads' }] : []),
    ...(canDecide(actor) ? [{ href: '/desk/people', label: 'People' }] : []),
    ...(canReview(actor) ? [{ href: '/region', label: 'Region' }] : []),
    ...(canReview(actor) ? [{ href: '/region/clubs', label: 'Clubs' }] : []),
    { href: '/curriculum', label: 'Curriculum' },
  ]
}

const roleWords = {
  assistant: 'assistant coach',
  head: 'head coach',
  reviewer: 'programme reviewer',
  lead: 'programme lead',
}

/** The head of a page for whoever is signed in; nobody goes to the sign-in page. */
export async function loadFrame(): Promise<PageFrame> {
  const actor = await requireActor()
  const posts = actor.clubs.map((post) => `${roleWords[post.role]}, ${post.clubName}`)
  const roles = actor.programmeRoles.map((role) => `${roleWords[role]}, ${actor.programme.name}`)
  return { who: actor.name, where: [...posts, ...roles].join(' · '), ways: listWays(actor) }
}

/** Where somebody who has just signed in wants to be. */
export async function loadHome(): Promise<string> {
  const actor = await requireActor()
  if (canDecide(actor)) return '/desk/queue'
  return canCoach(actor) ? '/deck' : '/region'
}
