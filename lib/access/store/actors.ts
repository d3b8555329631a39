import { asAccount } from '../../platform/db'
import type { Actor, ClubRole, ProgrammeRole } from '../actor'

/** The actor behind an account as of now, or null when it has no role in force. */
export function findActor(account: string, session: string, systemNow: number): Promise<Actor | null> {
  const now = new Date(systemNow)
  return asAccount(account, async (tx) => {
    const posts = await tx.membership.findMany({
      where: { accountId: account, from: { lte: now }, OR: [{ to: null }, { to: { gt: now } }] },
      orderBy: { from: 'asc' },
    })
    const programmeId = posts[0]?.programmeId
    const self = await tx.account.findUnique({ where: { id: account }, select: { name: true, initials: true } })
    const programme = programmeId ? await tx.programme.findUnique({ where: { id: programmeId } }) : null
    if (!programme || !self) return null
    const clubs = await tx.club.findMany({ where: { programmeId: programme.id } })
    return {
      account,
      session,
      name: self.name,
      initials: self.initials,
      programme: {
        id: programme.id,
        name: programme.name,
        zone: programme.zone,
        isDemo: programme.isDemo,
        clockOffset: Number(programme.clockOffsetMs),
      },
      clubs: posts.flatMap((post) => {
        const club = clubs.find((candidate) => candidate.id === post.clubId)
        return club ? [{ club: club.id, clubName: club.name, zone: club.zone, role: post.role as ClubRole }] : []
      }),
      programmeRoles: posts.flatMap((post) => (post.clubId === null ? [post.role as ProgrammeRole] : [])),
    }
  })
}
