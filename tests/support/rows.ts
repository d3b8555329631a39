import type { Scope } from '../../lib/access/scope'
import { readStandings } from '../../lib/assessment/store/standings'

/** How the divers in scope stand to every target, one after the other. */
export const readReadiness = async (scope: Scope) =>
  (await readStandings(scope)).divers.flatMap((diver) =>
    diver.rows.map((row) => ({ ...row, diverId: diver.id, clubId: diver.club })),
  )
