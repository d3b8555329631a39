import { v7 as uuidv7 } from 'uuid'
import { asAccount } from '../../platform/db'
import type { Scope } from '../scope'

export interface ClubRow {
  readonly id: string
  readonly name: string
  readonly zone: string
}

/** All clubs of the programme, by name. */
export const listClubs = (scope: Scope): Promise<ClubRow[]> =>
  asAccount(scope.account, (tx) =>
    tx.club.findMany({
      where: { programmeId: scope.programme },
      select: { id: true, name: true, zone: true },
      orderBy: { name: 'asc' },
    }),
  )

/** Adds a club to the programme and answers its id; null when one of that name is there already. For the lead. */
export function addClub(scope: Scope, { name, zone }: Omit<ClubRow, 'id'>): Promise<string | null> {
  return asAccount(scope.account, async (tx) => {
    const same = await tx.club.count({
      where: { programmeId: scope.programme, name: { equals: name, mode: 'insensitive' } },
    })
    if (same > 0) return null
    const id = uuidv7()
    await tx.club.create({ data: { id, programmeId: scope.programme, name, zone, createdAt: new Date(scope.at) } })
    return id
  })
}
