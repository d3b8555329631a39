import { cookies } from 'next/headers'
import { holderCookie, holderDays } from '@/lib/assessment/deck/holder'
import { getWebEnv } from '@/lib/platform/env'

/** Names the account that this browser's deck belongs to until somebody else signs in; null = nobody's. */
export async function nameHolder(account: string | null): Promise<void> {
  const store = await cookies()
  if (account === null) store.delete(holderCookie)
  else
    store.set(holderCookie, account, {
      sameSite: 'lax',
      secure: getWebEnv().address.startsWith('https:'),
      path: '/',
      maxAge: holderDays * 86_400,
    })
}
