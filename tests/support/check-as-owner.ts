import { consoleScopeOf } from '../../lib/access/scope'
import { checkReadiness, type ReadinessCheck } from '../../lib/assessment/store/check-readiness'
import { closeDatabase, connectAsOwner } from '../../lib/platform/db'

/** `rebuild --check` on a programme, as whoever runs the installation; afterwards this process is the application again. */
export async function checkAsOwner(programme: string, at: number): Promise<ReadinessCheck> {
  await closeDatabase()
  connectAsOwner()
  try {
    return await checkReadiness(
      consoleScopeOf({ id: programme, name: '', zone: 'UTC', isDemo: false, clockOffset: 0 }, at),
    )
  } finally {
    await closeDatabase()
  }
}
