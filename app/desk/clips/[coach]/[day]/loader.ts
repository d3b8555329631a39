import { notFound } from 'next/navigation'
import type { Actor } from '@/lib/access/actor'
import { coachingScopeOf, type Scope } from '@/lib/access/scope'
import { requireCoach } from '@/lib/access/session'
import type { Waiting } from '@/lib/assessment/clips/match-clips'
import { dayName, pairName } from '@/lib/assessment/readiness/wording'
import { readWaiting } from '@/lib/assessment/store/filmed'
import { dayIn, type EpochDay, formatDay } from '@/lib/assessment/time'
import { clockTime, instantAt } from '@/lib/assessment/wall-clock'
import { systemClock } from '@/lib/platform/clock'

/** An attempt of the session that can be linked, in words. */
export interface SessionRow extends Waiting {
  readonly time: string
  readonly who: string
  readonly name: string
}

export interface SessionPage {
  readonly coach: string
  /** `YYYY-MM-DD`. */
  readonly day: string
  readonly title: string
  readonly rows: readonly SessionRow[]
  /** Divers whose attempts wait too, without a consent to video. */
  readonly withoutConsent: readonly string[]
}

/** A session with what its actions need: who asks, and when the club's clocks show a second of its day. */
export interface OpenSession extends SessionPage {
  readonly scope: Scope
  readonly instantOf: (secondOfDay: number) => number
}

/** What waits of one coach's day, of what the actor may link; null when nothing does. */
export async function readSession(actor: Actor, coach: string, day: string): Promise<OpenSession | null> {
  const scope = coachingScopeOf(actor, systemClock())
  const { waiting, curriculum, coaches } = await readWaiting(scope)
  const own = waiting.filter((one) => one.coach === coach && formatDay(one.day) === day)
  const [first] = own
  if (!first) return null
  const { zone } = first.diver
  const date: EpochDay = first.day
  const when = dayName(date, { today: dayIn(scope.at, zone) })
  const nameOf = (one: (typeof own)[number]) => `${one.diver.givenName} ${one.diver.familyName}`
  return {
    ...{ coach, day, scope },
    title: coach === scope.account ? when : `${when}, filmed by ${coaches.get(coach) ?? 'another coach'}`,
    rows: own
      .filter(({ video }) => video)
      .map((one) => ({
        ...{ attempt: one.attempt, clip: one.clip, at: one.at },
        time: clockTime(one.at, zone),
        who: nameOf(one),
        name: pairName(one.pair, { curriculum }),
      })),
    withoutConsent: [...new Set(own.filter(({ video }) => !video).map(nameOf))],
    instantOf: (second) => instantAt(date, Math.floor(second / 60), zone) + (second % 60) * 1000,
  }
}

/** The page of a session; one that nothing waits of is not found. */
export async function loadSession(coach: string, day: string): Promise<SessionPage> {
  const session = await readSession(await requireCoach(), coach, day)
  if (!session) notFound()
  const { title, rows, withoutConsent } = session
  return { coach, day, title, rows, withoutConsent }
}
