import type { Scope } from '../../access/scope'
import { asAccount } from '../../platform/db'

/** A diver who left the programme: from which club, and when. Nobody is told who. */
export interface Leaver {
  readonly club: string
  readonly at: number
}

/** Everybody who has left by the time of the question; none for whoever does not review the programme. */
export const readLeavers = (scope: Scope): Promise<Leaver[]> =>
  asAccount(scope.account, async (tx) => {
    const rows = await tx.$queryRaw<{ clubId: string; leftAt: Date }[]>`
      SELECT * FROM region_leavers(${scope.programme}::uuid, ${new Date(scope.at)})`
    return rows.map(({ clubId, leftAt }) => ({ club: clubId, at: leftAt.getTime() }))
  })
