import { counted } from '../readiness/grammar'
import type { Instant } from '../time'

/** "12 minutes ago", "3 hours ago", "2 days ago"; what is a minute off or lies ahead is "just now". */
export function sayAgo(at: Instant, now: Instant): string {
  const minutes = Math.floor((now - at) / 60_000)
  if (minutes < 1) return 'just now'
  if (minutes < 60) return `${counted(minutes, 'minute')} ago`
  const hours = Math.floor(minutes / 60)
  return hours < 24 ? `${counted(hours, 'hour')} ago` : `${counted(Math.floor(hours / 24), 'day')} ago`
}
