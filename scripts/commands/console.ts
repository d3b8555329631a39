import { consoleScopeOf, type Scope } from '../../lib/access/scope'
import { asAccount, closeDatabase, connectAsOwner } from '../../lib/platform/db'

/** Who asks at the console: no account, through the owner's connection, which sees every row. */
export const nobody = '00000000-0000-0000-0000-000000000000'

/** Runs a command's work on the programme as whoever runs the installation, then lets go of the database. */
export async function atConsole<T>(work: (scope: Scope) => Promise<T>): Promise<T> {
  connectAsOwner()
  try {
    const programme = await asAccount(nobody, (tx) => tx.programme.findFirst())
    if (!programme)
      throw new Error(
        'The database holds no programme yet: run npm start for the demo, or plumbline programme NAME for your own.',
      )
    const { id, name, zone, isDemo, clockOffsetMs } = programme
    return await work(consoleScopeOf({ id, name, zone, isDemo, clockOffset: Number(clockOffsetMs) }, Date.now()))
  } finally {
    await closeDatabase()
  }
}
