import { notFound } from 'next/navigation'
import type { ClipMoment } from '@/app/_components/domain/clip/clip-player'
import { toClip } from '@/app/desk/loader'
import { coachingScopeOf } from '@/lib/access/scope'
import { requireCoach } from '@/lib/access/session'
import { dayName, pairName } from '@/lib/assessment/readiness/wording'
import { findMoment } from '@/lib/assessment/store/moments'
import { dayIn } from '@/lib/assessment/time'
import { systemClock } from '@/lib/platform/clock'

export interface MomentPage {
  readonly who: string
  readonly name: string
  readonly day: string
  /** The page of the skill, where the attempts stand. */
  readonly back: string
  readonly clip: ClipMoment
}

/** One moment of a diver of the coach's clubs; any other, and one without consent to video, is not found. */
export async function loadMoment(id: string): Promise<MomentPage> {
  const actor = await requireCoach()
  const scope = coachingScopeOf(actor, systemClock())
  const found = /^[0-9a-f-]{36}$/.test(id) ? await findMoment(scope, id) : null
  if (!found) notFound()
  const { curriculum, diver, pair, link, start, end } = found
  const who = `${diver.givenName} ${diver.familyName}`
  const name = pairName(pair, { curriculum })
  const day = dayName(found.day, { today: dayIn(scope.at, diver.zone) })
  return {
    who,
    name,
    day,
    back: `/desk/divers/${diver.id}/${encodeURIComponent(pair)}`,
    clip: toClip(link, { start, end }, `${who}, ${name}, ${day}`),
  }
}
