import { v7 as uuidv7 } from 'uuid'
import type { Scope } from '../../access/scope'
import type { VenueFeature } from '../../curriculum/requirement/model'
import { getEditionInForce } from '../../curriculum/store/editions'
import { asAccount } from '../../platform/db'
import { lockDivers } from './lock'
import { refreshReadiness } from './readiness'

/** What was last recorded of a club's features; one without an entry is unknown. */
export function readVenue(scope: Scope, club: string): Promise<ReadonlyMap<string, boolean>> {
  return asAccount(scope.account, async (tx) => {
    const rows = await tx.venueFlag.findMany({ where: { clubId: club }, orderBy: { recordedAt: 'asc' } })
    return new Map(rows.map((row) => [row.feature, row.has]))
  })
}

/** Records that a club has a feature, or has not, from now on; what its divers are ready for follows at once. */
export function recordVenue(scope: Scope, club: string, feature: VenueFeature, has: boolean): Promise<void> {
  return asAccount(
    scope.account,
    async (tx) => {
      const at = new Date(scope.at)
      await tx.venueFlag.create({
        data: { id: uuidv7(), clubId: club, feature, has, recordedAt: at, recordedBy: scope.account },
      })
      const members = await tx.diverMembership.findMany({
        where: { clubId: club, from: { lte: at }, OR: [{ to: null }, { to: { gt: at } }] },
      })
      const divers = members.map((member) => member.diverId)
      await lockDivers(tx, divers)
      await refreshReadiness(tx, scope, await getEditionInForce(tx, scope), divers)
    },
    { timeout: 60_000 },
  )
}
