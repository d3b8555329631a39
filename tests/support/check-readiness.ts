import { consoleScopeOf } from '../../lib/access/scope'
import { checkReadiness, type ReadinessCheck } from '../../lib/assessment/store/check-readiness'

import { closeDatabase, connectAsOwner } from '../../lib/platform/db'
import { readReadiness } from './rows'
import { coachAs, type SmallCoast } from './small-club'

/** Compares the readiness rows of a small coast with a fresh evaluation of its raw rows, as the console does. */
export async function checkReadinessAsOwner(coast: SmallCoast, at: number): Promise<ReadinessCheck> {
  // Divers without any row yet are read once, as the pages do.
  await readReadiness(await coachAs(coast, 'elsewhere', at))
  await readReadiness(await coachAs(coast, 'head', at))
  await closeDatabase()
  connectAsOwner()
  try {
    const programme = { id: coast.programme, name: '', zone: 'UTC', isDemo: false, clockOffset: 0 }
    return await checkReadiness(consoleScopeOf(programme, at))
  } finally {
    await closeDatabase()
  }
}
