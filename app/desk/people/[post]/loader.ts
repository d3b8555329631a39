import { notFound } from 'next/navigation'
import type { Actor } from '@/lib/access/actor'
import { mayManage } from '@/lib/access/posts'
import { type Scope, scopeOf } from '@/lib/access/scope'
import { requireActor } from '@/lib/access/session'
import { listClubs } from '@/lib/access/store/clubs'
import { findPost, type PostRow } from '@/lib/access/store/posts'
import { dayIn, formatDay } from '@/lib/assessment/time'
import { type Place, placeFacts, places } from '@/lib/curriculum/place'
import { readEditionInForce } from '@/lib/curriculum/store/editions'
import { systemClock } from '@/lib/platform/clock'
import { sayJudges } from '../loader'

export interface Managed {
  readonly actor: Actor
  readonly scope: Scope
  readonly post: PostRow & { readonly club: string }
  readonly clubName: string
  readonly zone: string
}

/** A post that is this actor's to manage; any other does not exist for her. */
export async function loadManaged(id: string): Promise<Managed> {
  const actor = await requireActor()
  const scope = scopeOf(actor, systemClock())
  const post = /^[0-9a-f-]{36}$/.test(id) ? await findPost(scope, id) : null
  if (!post || !mayManage(actor, post)) notFound()
  const club = (await listClubs(scope)).find((one) => one.id === post.club)
  if (!club) notFound()
  return { actor, scope, post: { ...post, club: club.id }, clubName: club.name, zone: club.zone }
}

interface Choice {
  readonly key: string
  readonly label: string
  readonly chosen: boolean
}

export interface PostPage {
  readonly id: string
  readonly name: string
  readonly clubName: string
  readonly judges: string
  readonly families: readonly Choice[]
  readonly places: readonly Choice[]
  /** `YYYY-MM-DD`, or empty without an end. */
  readonly until: string
}

/** One coach's post: what she may judge, and everything that the curriculum has to choose from. */
export async function loadPost(id: string): Promise<PostPage> {
  const { scope, post, clubName, zone } = await loadManaged(id)
  const pairs = [...(await readEditionInForce(scope)).pairs.values()]
  const taught = new Set(pairs.map((pair) => pair.holding.place))
  const { judges } = post
  return {
    id,
    name: post.name,
    clubName,
    judges: sayJudges(judges, scope.at, zone),
    families: [...new Set(pairs.map((pair) => pair.skill.family))].map((key) => ({
      key,
      label: key,
      chosen: judges ? judges.families.includes(key) : true,
    })),
    places: places
      .filter((place: Place) => taught.has(place))
      .map((key) => ({ key, label: placeFacts[key].label, chosen: judges ? judges.places.includes(key) : true })),
    until: judges?.until ? formatDay(dayIn(judges.until, zone)) : '',
  }
}
