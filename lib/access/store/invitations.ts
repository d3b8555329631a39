import { createHash, randomBytes } from 'node:crypto'
import { v7 as uuidv7 } from 'uuid'
import { asAccount, beforeSignIn } from '../../platform/db'
import type { ClubRole, ProgrammeRole } from '../actor'
import { type InvitationTimes, invitationDays, type Offer } from '../invite'
import type { Scope } from '../scope'

const dayLength = 86_400_000

/** What is stored of a token: a database that is read by a stranger opens no door. */
const hashToken = (token: string): string => createHash('sha256').update(token).digest('hex')

/** Makes an invitation and answers its token, which is kept nowhere. `systemNow`: links run out by the machine's clock. */
export async function makeInvitation(
  scope: Scope,
  offer: Offer,
  label: string,
  systemNow: number,
): Promise<{ readonly token: string }> {
  const token = randomBytes(32).toString('base64url')
  await asAccount(scope.account, (tx) =>
    tx.invitation.createMany({
      data: {
        id: uuidv7(),
        programmeId: scope.programme,
        clubId: offer.club,
        role: offer.role,
        tokenHash: hashToken(token),
        label,
        invitedBy: scope.account,
        createdAt: new Date(systemNow),
        expiresAt: new Date(systemNow + invitationDays * dayLength),
      },
    }),
  )
  return { token }
}

export interface OpenInvitation {
  readonly id: string
  readonly label: string
  readonly role: ClubRole | ProgrammeRole
  readonly club: string | null
  readonly expiresAt: number
}

/** Invitations that can still be accepted and that this account may withdraw, newest first. */
export async function listOpenInvitations(scope: Scope, systemNow: number): Promise<OpenInvitation[]> {
  const rows = await asAccount(scope.account, (tx) =>
    tx.invitation.findMany({
      where: {
        programmeId: scope.programme,
        acceptedAt: null,
        withdrawnAt: null,
        expiresAt: { gt: new Date(systemNow) },
      },
      omit: { tokenHash: true },
      orderBy: { createdAt: 'desc' },
    }),
  )
  return rows.map(({ id, label, role, clubId, expiresAt }) => ({
    id,
    label,
    role: role as OpenInvitation['role'],
    club: clubId,
    expiresAt: expiresAt.getTime(),
  }))
}

/** Takes an invitation back; false when it is not there to be taken back. */
export async function withdrawInvitation(scope: Scope, id: string, systemNow: number): Promise<boolean> {
  const { count } = await asAccount(scope.account, (tx) =>
    tx.invitation.updateMany({
      where: { id, programmeId: scope.programme, acceptedAt: null, withdrawnAt: null },
      data: { withdrawnAt: new Date(systemNow) },
    }),
  )
  return count > 0
}

/** What an invitation says to whoever holds its link. */
export interface Invitation extends InvitationTimes {
  readonly hash: string
  readonly inviter: string
  readonly clubName: string | null
  readonly offer: Offer
  readonly programme: {
    readonly id: string
    readonly name: string
    readonly zone: string
    readonly isDemo: boolean
    readonly clockOffset: number
  }
}

interface InvitationRow {
  readonly role: string
  readonly inviter: string
  readonly clubId: string | null
  readonly clubName: string | null
  readonly programmeId: string
  readonly programmeName: string
  readonly zone: string
  readonly isDemo: boolean
  readonly clockOffsetMs: bigint
  readonly expiresAt: Date
  readonly withdrawnAt: Date | null
  readonly acceptedAt: Date | null
}

/** The invitation of a token, whatever has become of it; null when there never was one. */
export async function findInvitation(token: string): Promise<Invitation | null> {
  const hash = hashToken(token)
  const rows = await beforeSignIn((tx) => tx.$queryRaw<InvitationRow[]>`SELECT * FROM invitation_of(${hash})`)
  const row = rows[0]
  if (!row) return null
  return {
    hash,
    inviter: row.inviter,
    clubName: row.clubName,
    offer: { role: row.role, club: row.clubId } as Offer,
    programme: {
      id: row.programmeId,
      name: row.programmeName,
      zone: row.zone,
      isDemo: row.isDemo,
      clockOffset: Number(row.clockOffsetMs),
    },
    expiresAt: row.expiresAt.getTime(),
    withdrawnAt: row.withdrawnAt?.getTime() ?? null,
    acceptedAt: row.acceptedAt?.getTime() ?? null,
  }
}
