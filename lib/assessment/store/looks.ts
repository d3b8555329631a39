import type { Tx } from '../../platform/db'

/**
 * Of attempts of other clubs' divers, those that were granted to this account to look at on video. Their divers' rows are
 * locked and their readiness is put out of date: whoever of their club reads it next works it out.
 */
export async function takeLooks(tx: Tx, attempts: readonly string[]): Promise<ReadonlySet<string>> {
  const taken = new Set<string>()
  for (const attempt of [...new Set(attempts)].sort()) {
    const rows = await tx.$queryRaw<{ taken: boolean }[]>`SELECT take_granted_look(${attempt}::uuid) AS taken`
    if (rows[0]?.taken) taken.add(attempt)
  }
  return taken
}

/** An attempt that may be looked at, granted by another club: nothing of what others rated. */
export interface GrantedLook {
  readonly attempt: string
  readonly givenName: string
  readonly moments: readonly string[]
}

/** What was granted to this account and still is. */
export async function listGrantedLooks(tx: Tx): Promise<GrantedLook[]> {
  const rows = await tx.$queryRaw<{ attemptId: string; givenName: string; momentId: string | null }[]>`
    SELECT * FROM granted_looks()`
  return [...new Set(rows.map((row) => row.attemptId))].map((attempt) => {
    const own = rows.filter((row) => row.attemptId === attempt)
    return {
      attempt,
      givenName: own[0]?.givenName ?? '',
      moments: own.flatMap(({ momentId }) => momentId ?? []),
    }
  })
}
