import { version } from '../../package.json'
import { pingDatabase } from './db'

export interface Health {
  readonly status: 'ok' | 'down'
  readonly database: 'ok' | 'unreachable'
  readonly version: string
}

/** Whether this process can do its work: it reaches the database as the application role. Never throws. */
export async function getHealth(): Promise<Health> {
  try {
    await pingDatabase()
    return { status: 'ok', database: 'ok', version }
  } catch {
    return { status: 'down', database: 'unreachable', version }
  }
}
