import type { SnapshotDiver } from '@/lib/assessment/deck/contract'
import type { PairKey } from '@/lib/curriculum/edition/curriculum'
import { writeRoute } from '../state/address'
import { useDeck } from './deck-context'
import { PairLabel } from './pair-label'

interface DiverLineProps {
  readonly diver: SnapshotDiver
  /** What is planned for her today, one tap away. */
  readonly watch?: readonly PairKey[]
}

/** A diver in a list: her name and what she works towards. */
export function DiverLine({ diver, watch = [] }: DiverLineProps) {
  const { curriculum } = useDeck().roster
  const level = curriculum.levels[curriculum.levelIndex(diver.level)]?.title ?? diver.level
  const toSign = diver.pairs.filter(({ state }) => state === 'to sign').length
  return (
    <li>
      <a className="deck-line" href={writeRoute({ at: 'diver', diver: diver.id })}>
        <span className="deck-line-main">{diver.name}</span>
        <span className="deck-sub">
          towards {level}
          {toSign > 0 ? ` · ${toSign} to sign` : ''}
        </span>
        {diver.standDown ? <strong className="deck-sub text-coral">{diver.standDown}</strong> : null}
      </a>
      {watch.length > 0 ? (
        <p className="deck-squads pb-2">
          {watch.map((pair) => (
            <a key={pair} className="deck-squad" href={writeRoute({ at: 'rate', diver: diver.id, pair })}>
              <span>
                <PairLabel pair={pair} />
              </span>
            </a>
          ))}
        </p>
      ) : null}
    </li>
  )
}
