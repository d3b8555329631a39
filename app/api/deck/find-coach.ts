import type { Actor } from '@/lib/access/actor'
import { canCoach } from '@/lib/access/can'
import { loadActor } from '@/lib/access/session'
import { answerWith } from '../answer'

/**
 * The coach who asks, or the answer that asks her to sign in. A deck says for whom it holds ratings: somebody else's session
 * on the same phone must neither read for her nor write in her place.
 */
export async function findCoach(request: Request): Promise<Actor | Response> {
  const actor = await loadActor()
  if (!actor) return answerWith(401, 'Sign in to go on. Nothing that you recorded is lost.')
  if (!canCoach(actor)) return answerWith(403, 'The deck is for coaches: this account coaches in no club.')
  const holder = request.headers.get('x-deck-coach')
  if (holder !== null && holder !== actor.account)
    return answerWith(
      401,
      'Somebody else is signed in here now. Sign in again as the coach who recorded these ratings.',
    )
  return actor
}
