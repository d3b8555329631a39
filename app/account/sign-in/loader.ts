import { connection } from 'next/server'
import { type DemoSignIn, listDemoSignIns } from '@/lib/access/store/sessions'
import { getEnv } from '@/lib/platform/env'

export interface Demo {
  readonly password: string
  readonly signIns: readonly DemoSignIn[]
}

/** The demo's sign-ins and their password, or null when this is a real programme. */
export async function loadDemo(): Promise<Demo | null> {
  await connection()
  const password = getEnv().demoPassword
  const signIns = password ? await listDemoSignIns() : []
  return password && signIns.length > 0 ? { password, signIns } : null
}
