import { coachingScopeOf } from '@/lib/access/scope'
import { readSnapshot } from '@/lib/assessment/store/snapshot'
import { systemClock } from '@/lib/platform/clock'
import { findCoach } from '../find-coach'
import { nameHolder } from '../holder'

/** Everything that the deck shows, for the coach's clubs only. */
export async function GET(request: Request): Promise<Response> {
  const actor = await findCoach(request)
  if (actor instanceof Response) return actor
  await nameHolder(actor.account)
  return Response.json(await readSnapshot(coachingScopeOf(actor, systemClock()), actor.name))
}
