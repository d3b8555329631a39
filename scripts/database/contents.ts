import { withClient } from './roles'

/** Whether the tables hold nothing, and whether what they hold is the demo. */
export const lookInto = (ownerUrl: string): Promise<{ empty: boolean; demo: boolean }> =>
  withClient(ownerUrl, async (client) => {
    const { rows } = await client.query<{ isDemo: boolean }>('SELECT "isDemo" FROM "Programme"')
    return { empty: rows.length === 0, demo: rows.some((row) => row.isDemo) }
  })

/** Sets the demo's clock back by the time in which nobody looked, so that its season does not grow old in a drawer. */
export const holdDemoClock = (ownerUrl: string, idleMs: number): Promise<void> =>
  withClient(ownerUrl, async (client) => {
    await client.query('UPDATE "Programme" SET "clockOffsetMs" = "clockOffsetMs" - $1 WHERE "isDemo"', [idleMs])
  })
