import { listClubs } from '@/lib/access/store/clubs'
import { listTransfers } from '@/lib/access/store/transfers'
import { loadHeadedDiver } from '../particulars/loader'

export interface MovingPage {
  readonly id: string
  readonly name: string
  readonly club: string
  readonly clubName: string
  readonly others: readonly { readonly id: string; readonly name: string }[]
  /** The name of the club to which a transfer is open, or null. */
  readonly open: string | null
}

/** Where a diver may go, for her head coach. */
export async function loadMoving(diver: string): Promise<MovingPage> {
  const { scope, id, name, club, clubName } = await loadHeadedDiver(diver)
  const clubs = await listClubs(scope)
  const open = (await listTransfers(scope)).find(
    (one) => one.diver === id && one.agreedAt === null && one.endedAt === null,
  )
  return {
    id,
    name,
    club,
    clubName,
    others: clubs.filter((one) => one.id !== club).map((one) => ({ id: one.id, name: one.name })),
    open: open ? (clubs.find((one) => one.id === open.toClub)?.name ?? '') : null,
  }
}
