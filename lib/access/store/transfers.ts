import { v7 as uuidv7 } from 'uuid'
import { asAccount, databaseCode } from '../../platform/db'
import type { Scope } from '../scope'
import type { TransferSides } from '../transfer'

export interface TransferRow extends TransferSides {
  readonly id: string
  /** Null while the old club has not said who is meant. */
  readonly diver: string | null
  /** As one club names the diver to the other; null once it is settled. */
  readonly name: string | null
  readonly bornOn: Date | null
  readonly proposedAt: number
}

/** Transfers from and to the clubs that the account heads, newest first. */
export async function listTransfers(scope: Scope): Promise<TransferRow[]> {
  const rows = await asAccount(scope.account, (tx) => tx.transfer.findMany({ orderBy: { proposedAt: 'desc' } }))
  return rows.map((row) => ({
    id: row.id,
    fromClub: row.fromClubId,
    toClub: row.toClubId,
    diver: row.diverId,
    name: row.name,
    bornOn: row.bornOn,
    proposedFor: row.proposedFor,
    proposedAt: row.proposedAt.getTime(),
    agreedAt: row.agreedAt?.getTime() ?? null,
    endedAt: row.endedAt?.getTime() ?? null,
  }))
}

export interface Proposal {
  readonly fromClub: string
  readonly toClub: string
  readonly proposedFor: string
  /** Null where the new club asks: it knows a name and a birth date, the old club says who is meant. */
  readonly diver: string | null
  readonly name: string
  readonly bornOn: Date | null
}

/** Proposes a transfer; false when one is open for this diver already. */
export async function proposeTransfer(scope: Scope, { fromClub, toClub, diver, ...rest }: Proposal): Promise<boolean> {
  try {
    await asAccount(scope.account, (tx) =>
      tx.transfer.create({
        data: {
          id: uuidv7(),
          fromClubId: fromClub,
          toClubId: toClub,
          diverId: diver,
          ...rest,
          proposedBy: scope.account,
          proposedAt: new Date(scope.at),
        },
      }),
    )
    return true
  } catch (error) {
    if (databaseCode(error) === 'P2002') return false
    throw error
  }
}

/** The other club's consent, which completes it: the record goes along, squads of the old club are left. */
export async function agreeToTransfer(
  scope: Scope,
  transfer: string,
  meant: string | null,
): Promise<'agreed' | 'closed' | 'not there'> {
  const rows = await asAccount(
    scope.account,
    (tx) => tx.$queryRaw<{ result: 'agreed' | 'closed' | 'not there' }[]>`
      SELECT agree_transfer(${transfer}::uuid, ${meant}::uuid, ${new Date(scope.at)}) AS result`,
  )
  return rows[0]?.result ?? 'closed'
}

/** Ends an open transfer, by either club: withdrawn by the one that proposed it, declined by the other. */
export async function endTransfer(scope: Scope, transfer: string): Promise<boolean> {
  const { count } = await asAccount(scope.account, (tx) =>
    tx.transfer.updateMany({
      where: { id: transfer, agreedAt: null, endedAt: null },
      data: { endedBy: scope.account, endedAt: new Date(scope.at), name: null, bornOn: null },
    }),
  )
  return count > 0
}

/** A diver leaves her club without a new one: her squads there are left, the record stays. False when she is not there. */
export function leaveClub(scope: Scope, diver: string, club: string, systemNow: number): Promise<boolean> {
  return asAccount(scope.account, async (tx) => {
    // Held until the end, so that a transfer that is agreed to meanwhile finds her gone, or she is not there to leave.
    const [open] = await tx.$queryRaw<{ id: string }[]>`SELECT "id" FROM "DiverMembership"
      WHERE "diverId" = ${diver}::uuid AND "clubId" = ${club}::uuid AND "to" IS NULL FOR UPDATE`
    if (!open) return false
    const squads = await tx.squad.findMany({ where: { clubId: club }, select: { id: true } })
    await tx.squadDiver.deleteMany({ where: { diverId: diver, squadId: { in: squads.map(({ id }) => id) } } })
    const to = new Date(Math.min(scope.at, systemNow))
    // What is kept of her for speed is due when somebody next reads her, as in put_into_club.
    const validUntil = new Date(to.getTime() - 86_400_000)
    await tx.readiness.updateMany({ where: { diverId: diver }, data: { validUntil } })
    await tx.diverMembership.updateMany({ where: { id: open.id }, data: { to } })
    return true
  })
}

export interface FormerDiver {
  readonly id: string
  readonly name: string
  readonly club: string
  readonly left: number
}

/** Divers of no club today who were with a club of this head coach last. */
export function listFormerDivers(scope: Scope): Promise<FormerDiver[]> {
  return asAccount(scope.account, async (tx) => {
    const rows = await tx.$queryRaw<{ id: string }[]>`SELECT unnest(app_former_diver_ids()) AS id`
    const where = { diverId: { in: rows.map(({ id }) => id) } }
    const words = await tx.diverWords.findMany({ where })
    const members = await tx.diverMembership.findMany({ where, orderBy: { from: 'desc' } })
    return words.map(({ diverId, givenName, familyName }) => {
      const last = members.find((member) => member.diverId === diverId)
      return {
        id: diverId,
        name: `${givenName ?? 'Name'} ${familyName ?? 'erased'}`,
        club: last?.clubId ?? '',
        left: last?.to?.getTime() ?? 0,
      }
    })
  })
}

/** Takes a diver who left back into the club that she was with last; false when she is not to be taken back there. */
export async function takeBack(scope: Scope, diver: string, club: string): Promise<boolean> {
  const rows = await asAccount(
    scope.account,
    (tx) => tx.$queryRaw<{ taken: boolean }[]>`
      SELECT take_back_diver(${diver}::uuid, ${club}::uuid, ${new Date(scope.at)}) AS taken`,
  )
  return rows[0]?.taken ?? false
}
