import { canPublish } from '@/lib/access/can'
import { mayManage } from '@/lib/access/posts'
import { scopeOf } from '@/lib/access/scope'
import { requireReviewer } from '@/lib/access/session'
import { listClubs } from '@/lib/access/store/clubs'
import { listOpenInvitations, type OpenInvitation } from '@/lib/access/store/invitations'
import { listPosts } from '@/lib/access/store/posts'
import { dayName } from '@/lib/assessment/readiness/wording'
import { dayIn } from '@/lib/assessment/time'
import { systemClock } from '@/lib/platform/clock'

export interface ClubsPage {
  readonly programme: string
  readonly zone: string
  /** The lead adds and invites; a reviewer reads. */
  readonly mayAdd: boolean
  readonly clubs: readonly {
    readonly id: string
    readonly name: string
    readonly heads: readonly { readonly id: string; readonly name: string; readonly href: string | null }[]
    readonly assistants: number
  }[]
  readonly invitations: readonly { readonly id: string; readonly label: string; readonly until: string }[]
}

const offerWords: Readonly<Record<OpenInvitation['role'], string>> = {
  assistant: 'assistant coach',
  head: 'head coach',
  reviewer: 'reviewer',
  lead: 'programme lead',
}

/** The programme's clubs with their head coaches, and the links that are open. */
export async function loadClubs(): Promise<ClubsPage> {
  const actor = await requireReviewer()
  const now = systemClock()
  const scope = scopeOf(actor, now)
  const clubs = await listClubs(scope)
  const posts = await Promise.all(clubs.map((club) => listPosts(scope, club.id)))
  const invitations = await listOpenInvitations(scope, now)
  const today = dayIn(now, scope.zone)
  return {
    programme: actor.programme.name,
    zone: scope.zone,
    mayAdd: canPublish(actor),
    clubs: clubs.map((club, index) => {
      const here = posts[index] ?? []
      return {
        id: club.id,
        name: club.name,
        heads: here
          .filter((post) => post.role === 'head')
          .map((post) => ({
            id: post.id,
            name: post.name,
            href: mayManage(actor, post) ? `/desk/people/${post.id}` : null,
          })),
        assistants: here.filter((post) => post.role === 'assistant').length,
      }
    }),
    invitations: invitations
      .filter((one) => one.role !== 'assistant')
      .map((one) => ({
        id: one.id,
        label: [one.label, offerWords[one.role], clubs.find((club) => club.id === one.club)?.name]
          .filter(Boolean)
          .join(' · '),
        until: dayName(dayIn(one.expiresAt, scope.zone), { today }),
      })),
  }
}
