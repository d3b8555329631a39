import { coachingScopeOf } from '@/lib/access/scope'
import { requireCoach } from '@/lib/access/session'
import { sayAgo } from '@/lib/assessment/clips/say-ago'
import { dayName, pairName } from '@/lib/assessment/readiness/wording'
import { readWaiting, type WaitingAttempt, type WaitingClips } from '@/lib/assessment/store/filmed'
import { dayIn, formatDay } from '@/lib/assessment/time'
import { clockTime } from '@/lib/assessment/wall-clock'
import { systemClock } from '@/lib/platform/clock'

/** One attempt that waits for its clip, as a line. */
export interface WaitingRow {
  readonly attempt: string
  /** Time of day in the club. */
  readonly time: string
  readonly who: string
  /** Page of the skill, where the moment will stand. */
  readonly href: string
  readonly name: string
  readonly clip: number
  readonly ago: string
  /** Whether a consent to video is in force: without it nothing can be linked. */
  readonly video: boolean
}

/** What one coach filmed on one day. */
export interface Session {
  readonly key: string
  readonly day: string
  /** Whose camera it was; null when it is the reader's own. */
  readonly coach: string | null
  /** Where a whole list of clips is pasted. */
  readonly href: string
  /** How many of them can be linked. */
  readonly linkable: number
  readonly rows: readonly WaitingRow[]
}

export interface ClipsPage {
  readonly count: number
  readonly sessions: readonly Session[]
}

const keyOf = ({ coach, day }: WaitingAttempt): string => `${coach}/${formatDay(day)}`

function toRow({ curriculum }: WaitingClips, one: WaitingAttempt, now: number): WaitingRow {
  return {
    attempt: one.attempt,
    time: clockTime(one.at, one.diver.zone),
    who: `${one.diver.givenName} ${one.diver.familyName}`,
    href: `/desk/divers/${one.diver.id}/${encodeURIComponent(one.pair)}`,
    name: pairName(one.pair, { curriculum }),
    clip: one.clip,
    ago: sayAgo(one.at, now),
    video: one.video,
  }
}

/** What waits for its clip, a session a coach and day, the newest first. */
export async function loadClips(): Promise<ClipsPage> {
  const actor = await requireCoach()
  const scope = coachingScopeOf(actor, systemClock())
  const found = await readWaiting(scope)
  const keys = [...new Set(found.waiting.map(keyOf))]
  const sessions = keys.flatMap((key): (Session & { at: number })[] => {
    const all = found.waiting.filter((one) => keyOf(one) === key)
    const [first] = all
    if (!first) return []
    const { day, coach, diver, at } = first
    return [
      {
        key,
        at,
        day: dayName(day, { today: dayIn(scope.at, diver.zone) }),
        coach: coach === scope.account ? null : (found.coaches.get(coach) ?? 'another coach'),
        href: `/desk/clips/${key}`,
        linkable: all.filter(({ video }) => video).length,
        rows: all.map((one) => toRow(found, one, scope.at)),
      },
    ]
  })
  return { count: found.waiting.length, sessions: sessions.sort((a, b) => b.at - a.at) }
}
