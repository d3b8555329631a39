import { holderCookie } from '@/lib/assessment/deck/holder'

/** The account named in a cookie header as this browser's; null when nobody is signed in. */
export function holderIn(cookies: string): string | null {
  const prefix = `${holderCookie}=`
  const found = cookies.split(/;\s*/).find((cookie) => cookie.startsWith(prefix))
  return found?.slice(prefix.length) || null
}
