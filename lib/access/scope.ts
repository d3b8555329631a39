import type { Actor } from './actor'
import { canReview } from './can'

declare const made: unique symbol

/**
 * What a question may touch: made here from an actor and nowhere else, carried into every `where`.
 * The database's policies hold independently of it.
 */
export interface Scope {
  readonly [made]: true
  readonly account: string
  readonly programme: string
  /** Clubs whose divers may be read; null: all clubs of the programme (reviewer, lead). */
  readonly clubs: readonly string[] | null
  /** The programme's time of the question, in milliseconds. */
  readonly at: number
  /** The programme's IANA zone. */
  readonly zone: string
}

const brand = (scope: Omit<Scope, typeof made>): Scope => scope as Scope

/** The programme's time now: the system's, moved by the demo's offset. */
export const programmeTime = (actor: Actor, systemNow: number): number => systemNow + actor.programme.clockOffset

/** All that the actor may read: her clubs' divers, or the programme's. */
export function scopeOf(actor: Actor, systemNow: number): Scope {
  return brand({
    account: actor.account,
    programme: actor.programme.id,
    clubs: canReview(actor) ? null : actor.clubs.map((post) => post.club),
    at: programmeTime(actor, systemNow),
    zone: actor.programme.zone,
  })
}

/** The clubs in which the actor coaches, whatever else she may read: what the deck and the desk work on. */
export function coachingScopeOf(actor: Actor, systemNow: number): Scope {
  return brand({ ...scopeOf(actor, systemNow), clubs: actor.clubs.map((post) => post.club) })
}

/** Whoever runs the installation, at its console, through the owner's connection: the whole programme, as nobody. */
export function consoleScopeOf(programme: Actor['programme'], systemNow: number): Scope {
  return brand({
    account: '00000000-0000-0000-0000-000000000000',
    programme: programme.id,
    clubs: null,
    at: systemNow + programme.clockOffset,
    zone: programme.zone,
  })
}

/** Somebody who accepts an invitation: the account that she has or is about to have, who reads nothing yet. */
export function invitedScopeOf(account: string, programme: Omit<Actor['programme'], 'name'>, systemNow: number): Scope {
  return brand({
    account,
    programme: programme.id,
    clubs: [],
    at: systemNow + programme.clockOffset,
    zone: programme.zone,
  })
}
