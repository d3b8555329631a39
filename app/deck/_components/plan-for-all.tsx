import type { PairKey } from '@/lib/curriculum/edition/curriculum'
import { withWatch } from '../state/plan'
import { PairToggle } from './pair-toggle'
import type { PlanWatchProps } from './plan-watch'

/** What everybody who is here works on, and what is looked for: chosen for all with one tap. Nothing while there is neither. */
export function PlanForAll({ plan, keep, found }: Omit<PlanWatchProps, 'diver'>) {
  const isForAll = (pair: PairKey) =>
    plan.here.length > 0 && plan.here.every((diver) => plan.watch[diver]?.includes(pair))
  const shared = plan.here.length > 1 ? plan.here.flatMap((diver) => plan.watch[diver] ?? []).filter(isForAll) : []
  const shown = [...new Set([...shared, ...found])]
  if (shown.length === 0) return null
  return (
    <section aria-label="For everybody">
      <h2 className="deck-head">For everybody who is here</h2>
      <ul className="deck-squads">
        {shown.map((pair) => (
          <li key={pair}>
            <PairToggle
              pair={pair}
              chosen={isForAll(pair)}
              onChoose={(choose) => keep(withWatch(plan, plan.here, pair, choose))}
            />
          </li>
        ))}
      </ul>
    </section>
  )
}
