import type { Rating } from '../curriculum/model'
import type { Instant } from './time'

/** A moment as one that another can be compared with: when it was dived, and what its coach rated explicitly. */
export interface RatedMoment {
  readonly id: string
  readonly at: Instant
  readonly ratings: readonly Rating[]
}

/** Why a moment stands out among others of the same dive. */
export type StandsOut = 'oldest' | 'best' | 'latest'

const mean = ({ ratings }: RatedMoment): number =>
  ratings.reduce<number>((sum, rating) => sum + rating, 0) / ratings.length

/** The moment rated best on the whole, the later of two alike; null when nobody rated any explicitly. */
export function bestOf<Moment extends RatedMoment>(moments: readonly Moment[]): Moment | null {
  const rated = moments.filter(({ ratings }) => ratings.length > 0)
  return [...rated].sort((a, b) => mean(b) - mean(a) || b.at - a.at)[0] ?? null
}

/** The moments of one diver, oldest first, that stand out: each with all that it stands out by. */
export function standOut<Moment extends RatedMoment>(
  moments: readonly Moment[],
): { readonly moment: Moment; readonly by: readonly StandsOut[] }[] {
  const sorted = [...moments].sort((a, b) => a.at - b.at)
  const best = bestOf(sorted)
  return sorted.flatMap((moment) => {
    const by: StandsOut[] = [
      ...(moment === sorted[0] ? (['oldest'] as const) : []),
      ...(moment === best ? (['best'] as const) : []),
      ...(moment === sorted.at(-1) ? (['latest'] as const) : []),
    ]
    return by.length > 0 ? [{ moment, by }] : []
  })
}

/** Why two moments cannot be compared: one was asked for twice, or they show different dives. */
export type NotComparable = { readonly why: 'same moment' } | { readonly why: 'different dives' }

/** Whether two moments can be compared, of one with all its copies; the same dive from another height can, and another dive cannot. */
export function notComparable(
  first: { readonly copies: readonly string[]; readonly skill: string },
  second: { readonly id: string; readonly skill: string },
): NotComparable | null {
  if (first.copies.includes(second.id)) return { why: 'same moment' }
  return first.skill === second.skill ? null : { why: 'different dives' }
}
