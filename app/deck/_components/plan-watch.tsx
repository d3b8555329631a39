import type { SnapshotDiver } from '@/lib/assessment/deck/contract'
import type { PairKey } from '@/lib/curriculum/edition/curriculum'
import { type DayPlan, withWatch } from '../state/plan'
import { PairLabel } from './pair-label'

interface PlanWatchProps {
  readonly diver: SnapshotDiver
  readonly plan: DayPlan
  readonly keep: (plan: DayPlan) => void
}

/** What is chosen for a diver and what is suggested, each a tap. */
export function PlanWatch({ diver, plan, keep }: PlanWatchProps) {
  const chosen = plan.watch[diver.id] ?? []
  const suggested = diver.watch ?? []
  const others = chosen.filter((pair) => !suggested.some((one) => one.pair === pair))
  const toggle = (pair: PairKey) => keep(withWatch(plan, [diver.id], pair, !chosen.includes(pair)))
  if (suggested.length === 0 && others.length === 0)
    return <p className="deck-sub">Nothing stands out. Choose for everybody above, or on the diver’s own page.</p>
  return (
    <ul className="deck-watch">
      {[...suggested, ...others.map((pair) => ({ pair, why: 'Chosen for today.' }))].map(({ pair, why }) => (
        <li key={pair}>
          <button
            type="button"
            className="deck-squad"
            aria-pressed={chosen.includes(pair)}
            onClick={() => toggle(pair)}
          >
            <span>
              <PairLabel pair={pair} />
            </span>
          </button>
          <span className="deck-sub">{why}</span>
        </li>
      ))}
    </ul>
  )
}
