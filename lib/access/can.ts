import type { Actor, ClubPost } from './actor'

/** The actor's post in a club, or null. */
export const postIn = (actor: Actor, club: string): ClubPost | null =>
  actor.clubs.find((post) => post.club === club) ?? null

/** Coaches on the deck of some club. */
export const canCoach = (actor: Actor): boolean => actor.clubs.length > 0

/** Head coach of some club, or of the one named. */
export const canDecide = (actor: Actor, club?: string): boolean =>
  actor.clubs.some((post) => post.role === 'head' && (club === undefined || post.club === club))

/** May sign a skill of a club's diver: any coach where the skill says `coach`, the head coach for all. */
export const canSign = (actor: Actor, club: string, signer: 'coach' | 'head'): boolean => {
  const post = postIn(actor, club)
  return post !== null && (signer === 'coach' || post.role === 'head')
}

/** Reads across the programme's clubs. */
export const canReview = (actor: Actor): boolean => actor.programmeRoles.length > 0

/** Owns the curriculum. */
export const canPublish = (actor: Actor): boolean => actor.programmeRoles.includes('lead')

/** The clubs that the actor heads, in the order of her posts. */
export const headedClubs = (actor: Actor): readonly ClubPost[] => actor.clubs.filter((post) => post.role === 'head')
