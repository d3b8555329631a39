import { BobMark } from '@/app/_components/domain/arc/bob'
import { DiveNumber } from '@/app/_components/domain/dive/dive-number'
import type { SnapshotCall } from '@/lib/assessment/deck/contract'
import type { Pair } from '@/lib/curriculum/edition/curriculum'
import { placeFacts } from '@/lib/curriculum/place'
import type { Route } from '../state/address'
import { nextNumber } from '../state/deck-state'
import { Top } from './top'

interface RateTopProps {
  readonly name: string
  readonly pair: Pair
  readonly back: { readonly to: Route; readonly label: string }
  readonly call?: SnapshotCall | null
  /** Said in place of the call. */
  readonly word?: string
}

/** The call as bobs: kept ones filled, the rest still hanging. */
function Called({ call }: { call: SnapshotCall }) {
  const numbers = Array.from({ length: call.call.count }, (_, index) => index + 1)
  return (
    <span className="deck-called">
      called {nextNumber(call)} of {call.call.count}{' '}
      <span aria-hidden="true">
        {numbers.map((number) => (
          <BobMark key={number} kind={call.kept.includes(number) ? 'seen' : 'none'} />
        ))}
      </span>
    </span>
  )
}

/** Who, what and where, in the 56 px that every attempt begins with. */
export function RateTop({ name, pair, back, call, word }: RateTopProps) {
  const { dive, title } = pair.skill
  return (
    <Top back={back}>
      <h1 className="deck-subject">
        {dive ? (
          <span className="deck-number">
            <DiveNumber>{dive}</DiveNumber>
          </span>
        ) : null}
        <span className="deck-name">
          {name}
          {dive ? null : ` · ${title}`}
        </span>
      </h1>
      <p className="deck-sub">
        {placeFacts[pair.holding.place].label}
        {call || word ? ' · ' : ''}
        {call ? <Called call={call} /> : word}
      </p>
    </Top>
  )
}
