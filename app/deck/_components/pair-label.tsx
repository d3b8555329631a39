import { DiveNumber } from '@/app/_components/domain/dive/dive-number'
import type { PairKey } from '@/lib/curriculum/edition/curriculum'
import { placeFacts } from '@/lib/curriculum/place'
import { useDeck } from './deck-context'

/** A pair in few words: the dive number or the title, how it begins where a dive is taught both ways, and the place. */
export function PairLabel({ pair: key }: { pair: PairKey }) {
  const { curriculum } = useDeck().roster
  const pair = curriculum.pairs.get(key)
  if (!pair) return key
  const { dive, title, approach } = pair.skill
  const ways = [...curriculum.skills.values()].filter((skill) => skill.dive === dive).length
  return (
    <>
      {dive ? <DiveNumber>{dive}</DiveNumber> : title} {dive && ways > 1 ? `${approach} ` : ''}
      {placeFacts[pair.holding.place].label}
    </>
  )
}
