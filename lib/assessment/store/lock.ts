import type { Tx } from '../../platform/db'

/** Takes the divers' row locks in one order, so that two transactions never wait for each other in a ring. */
export async function lockDivers(tx: Tx, divers: readonly string[]): Promise<void> {
  const ids = [...new Set(divers)].sort()
  if (ids.length > 0) await tx.$executeRaw`SELECT lock_divers(${ids}::uuid[])`
}
