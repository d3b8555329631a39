import { DiveNumber } from '@/app/_components/domain/dive/dive-number'
import type { PairKey } from '@/lib/curriculum/edition/curriculum'
import { placeFacts } from '@/lib/curriculum/place'
import { useDeck } from './deck-context'

/** A pair in few words: the dive number or the title, and the place. */
export function PairLabel({ pair: key }: { pair: PairKey }) {
  const pair = useDeck().roster.curriculum.pairs.get(key)
  if (!pair) return key
  return (
    <>
      {pair.skill.dive ? <DiveNumber>{pair.skill.dive}</DiveNumber> : pair.skill.title}{' '}
      {placeFacts[pair.holding.place].label}
    </>
  )
}
