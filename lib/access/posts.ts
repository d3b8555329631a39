import type { Actor } from './actor'
import { canDecide, canPublish } from './can'

/** Somebody's role in a club (or in the programme, `club` null), today. */
export interface Post {
  readonly account: string
  readonly club: string | null
  readonly role: string
}

/**
 * Who may end a post and set what it covers: the programme lead, and for an assistant the head coach of the club. Nobody
 * does so for herself, so that no club is left without a head coach by her own hand.
 */
export const mayManage = (actor: Actor, post: Post): boolean =>
  post.account !== actor.account &&
  (canPublish(actor) || (post.role === 'assistant' && post.club !== null && canDecide(actor, post.club)))
