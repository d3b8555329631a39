import type { SnapshotDiver } from '@/lib/assessment/deck/contract'
import type { PairKey } from '@/lib/curriculum/edition/curriculum'
import { type DayPlan, withWatch } from '../state/plan'
import { PairLabel } from './pair-label'

export interface PlanWatchProps {
  readonly diver: SnapshotDiver
  readonly plan: DayPlan
  readonly keep: (plan: DayPlan) => void
  /** Looked for by number or word. */
  readonly found: readonly PairKey[]
}

/** What is suggested for a diver, what was chosen and what is looked for, each a tap. */
export function PlanWatch({ diver, plan, keep, found }: PlanWatchProps) {
  const chosen = plan.watch[diver.id] ?? []
  const suggested = diver.watch ?? []
  const others = [...new Set([...chosen, ...found])].filter((pair) => !suggested.some((one) => one.pair === pair))
  const toggle = (pair: PairKey) => keep(withWatch(plan, [diver.id], pair, !chosen.includes(pair)))
  const say = (pair: PairKey) => (chosen.includes(pair) ? 'Chosen for today.' : '')
  if (suggested.length + others.length === 0)
    return <p className="deck-sub">Nothing stands out. Find a skill above to choose one.</p>
  return (
    <ul className="deck-watch">
      {[...suggested, ...others.map((pair) => ({ pair, why: say(pair) }))].map(({ pair, why }) => (
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
