import type { SnapshotDiver } from '@/lib/assessment/deck/contract'
import { writeRoute } from '../state/address'
import { useDeck } from './deck-context'

/** A diver in a list: her name and what she works towards. */
export function DiverLine({ diver }: { diver: SnapshotDiver }) {
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
    </li>
  )
}
