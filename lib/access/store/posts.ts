import { asAccount, type Tx } from '../../platform/db'
import type { ClubRole, ProgrammeRole } from '../actor'
import type { Scope } from '../scope'

/** Who has which role where, today, and what a coach may judge there. */
export interface PostRow {
  readonly id: string
  readonly account: string
  readonly name: string
  readonly initials: string
  /** Null for a role in the programme. */
  readonly club: string | null
  readonly role: ClubRole | ProgrammeRole
  readonly from: number
  /** What was set for the coach last; null: she may judge everything. */
  readonly judges: {
    readonly families: readonly string[]
    readonly places: readonly string[]
    /** Instant in milliseconds; null without an end. */
    readonly until: number | null
  } | null
}

async function readPosts(tx: Tx, scope: Scope, where: { clubId?: string | null; id?: string }): Promise<PostRow[]> {
  const posts = await tx.membership.findMany({
    where: { ...where, programmeId: scope.programme, to: null },
    orderBy: [{ role: 'desc' }, { from: 'asc' }],
  })
  const people = await tx.account.findMany({
    where: { id: { in: posts.map((post) => post.accountId) } },
    select: { id: true, name: true, initials: true },
  })
  const scopes = await tx.coachScope.findMany({
    where: { accountId: { in: people.map((person) => person.id) } },
    orderBy: { setAt: 'desc' },
  })
  return posts.map((post) => {
    const person = people.find((one) => one.id === post.accountId)
    const set = scopes.find((one) => one.accountId === post.accountId && one.clubId === post.clubId)
    return {
      id: post.id,
      account: post.accountId,
      name: person?.name ?? '',
      initials: person?.initials ?? '',
      club: post.clubId,
      role: post.role as PostRow['role'],
      from: post.from.getTime(),
      judges: set ? { families: set.families, places: set.places, until: set.until?.getTime() ?? null } : null,
    }
  })
}

/** The posts of a club that this account sees, or, with null, the roles in the programme. Head coaches first. */
export const listPosts = (scope: Scope, club: string | null): Promise<PostRow[]> =>
  asAccount(scope.account, (tx) => readPosts(tx, scope, { clubId: club }))

/** One post in force, or null: outside what the account sees it does not exist. */
export const findPost = (scope: Scope, id: string): Promise<PostRow | null> =>
  asAccount(scope.account, async (tx) => (await readPosts(tx, scope, { id }))[0] ?? null)
