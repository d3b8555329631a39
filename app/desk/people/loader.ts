import { notFound } from 'next/navigation'
import type { Actor, ClubPost } from '@/lib/access/actor'
import { headedClubs } from '@/lib/access/can'
import { mayManage } from '@/lib/access/posts'
import { coachingScopeOf, type Scope } from '@/lib/access/scope'
import { requireHeadCoach } from '@/lib/access/session'
import { listOpenInvitations } from '@/lib/access/store/invitations'
import { listPosts, type PostRow } from '@/lib/access/store/posts'
import { dayName } from '@/lib/assessment/readiness/wording'
import { readVenue } from '@/lib/assessment/store/venue'
import { dayIn } from '@/lib/assessment/time'
import { placeFacts, places } from '@/lib/curriculum/place'
import { systemClock } from '@/lib/platform/clock'

export interface Headed {
  readonly actor: Actor
  readonly scope: Scope
  readonly club: ClubPost
  /** Where she heads several: a link to the same page of each. */
  readonly choice: readonly { readonly href: string; readonly name: string; readonly current: boolean }[]
}

/** The club that a head coach's page is about: the one in the address, or her first. Not found for other clubs. */
export async function loadHeaded(path: string, asked: string | string[] | undefined): Promise<Headed> {
  const actor = await requireHeadCoach()
  const clubs = headedClubs(actor)
  const club = asked === undefined ? clubs[0] : clubs.find((one) => one.club === asked)
  if (!club) notFound()
  return {
    actor,
    scope: coachingScopeOf(actor, systemClock()),
    club,
    choice: clubs.map((one) => ({
      href: `${path}?club=${one.club}`,
      name: one.clubName,
      current: one.club === club.club,
    })),
  }
}

/** "forward and back at 1 m until 3 May": what a coach may judge, as it follows "judges". */
export function sayJudges(judges: PostRow['judges'], at: number, zone: string): string {
  if (!judges) return 'everything'
  if (judges.families.length === 0 || judges.places.length === 0) return 'nothing'
  const today = dayIn(at, zone)
  const where = places.filter((place) => judges.places.includes(place)).map((place) => placeFacts[place].label)
  const until = judges.until === null ? '' : `, until ${dayName(dayIn(judges.until, zone), { today })}`
  const over = judges.until !== null && judges.until < at ? ' (over)' : ''
  return `${judges.families.join(', ')}; ${where.join(', ')}${until}${over}`
}

export interface PeoplePage extends Omit<Headed, 'actor' | 'scope'> {
  readonly coaches: readonly {
    readonly id: string
    readonly name: string
    readonly role: string
    readonly since: string
    readonly judges: string
    /** Null for posts that are not hers to manage. */
    readonly href: string | null
  }[]
  readonly invitations: readonly { readonly id: string; readonly label: string; readonly until: string }[]
  readonly has3m: boolean | null
}

const roleWord: Readonly<Record<string, string>> = { assistant: 'assistant coach', head: 'head coach' }

/** The coaches of a club, who is invited, and what boards there are. */
export async function loadPeople(asked: string | string[] | undefined): Promise<PeoplePage> {
  const { actor, scope, club, choice } = await loadHeaded('/desk/people', asked)
  const now = systemClock()
  const posts = await listPosts(scope, club.club)
  const invitations = await listOpenInvitations(scope, now)
  const venue = await readVenue(scope, club.club)
  const nameOf = (instant: number, at: number) => dayName(dayIn(instant, club.zone), { today: dayIn(at, club.zone) })
  return {
    club,
    choice,
    coaches: posts.map((post) => ({
      id: post.id,
      name: post.name,
      role: roleWord[post.role] ?? post.role,
      since: nameOf(post.from, scope.at),
      judges: sayJudges(post.judges, scope.at, club.zone),
      href: mayManage(actor, post) ? `/desk/people/${post.id}` : null,
    })),
    invitations: invitations
      .filter((one) => one.club === club.club && one.role === 'assistant')
      .map(({ id, label, expiresAt }) => ({ id, label, until: nameOf(expiresAt, now) })),
    has3m: venue.get('board-3m') ?? null,
  }
}
