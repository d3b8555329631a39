import type { SnapshotDiver } from '@/lib/assessment/deck/contract'
import type { PairKey } from '@/lib/curriculum/edition/curriculum'
import { type DayPlan, withWatch } from '../state/plan'
import { PairToggle } from './pair-toggle'

export interface PlanWatchProps {
  readonly diver: SnapshotDiver
  readonly plan: DayPlan
  readonly keep: (plan: DayPlan) => void
  /** Looked for by number or word. */
  readonly found: readonly PairKey[]
}

/** What is suggested for a diver, each with its reason; then what was chosen beside that and what is looked for. */
export function PlanWatch({ diver, plan, keep, found }: PlanWatchProps) {
  const chosen = plan.watch[diver.id] ?? []
  const suggested = diver.watch ?? []
  const others = [...new Set([...chosen, ...found])].filter((pair) => !suggested.some((one) => one.pair === pair))
  const toggle = (pair: PairKey) => (
    <PairToggle
      pair={pair}
      chosen={chosen.includes(pair)}
      onChoose={(choose) => keep(withWatch(plan, [diver.id], pair, choose))}
    />
  )
  if (suggested.length + others.length === 0)
    return <p className="deck-sub">Nothing stands out. Find a skill above to choose one.</p>
  return (
    <>
      <ul className="deck-watch">
        {suggested.map(({ pair, why }) => (
          <li key={pair}>
            {toggle(pair)}
            <span className="deck-sub">{why}</span>
          </li>
        ))}
      </ul>
      <ul className="deck-squads">
        {others.map((pair) => (
          <li key={pair}>{toggle(pair)}</li>
        ))}
      </ul>
    </>
  )
}
