import { copied, type DayPlan, dayOf, findEarlier, findPlan, newPlan } from '../state/plan'
import { useDeck } from './deck-context'

export interface PlanOfToday {
  /** What is kept for today; null when nothing is. */
  readonly kept: DayPlan | null
  /** The same, or an empty one to begin with. */
  readonly plan: DayPlan
  readonly earlier: DayPlan | null
  readonly copyEarlier: () => void
  readonly keep: (plan: DayPlan) => void
}

/** The plan of a squad for today: every change is kept on this phone at once. */
export function usePlan(squad: string): PlanOfToday {
  const { roster, state, dispatch } = useDeck()
  const day = dayOf(Date.now())
  const members = roster.snapshot.squads.find(({ id }) => id === squad)?.divers ?? []
  const kept = findPlan(state.plans, squad, day)
  const earlier = findEarlier(state.plans, squad, day)
  const keep = (plan: DayPlan) => dispatch({ type: 'plan', plan })
  return {
    kept,
    plan: kept ?? newPlan(squad, day, members),
    earlier,
    copyEarlier: () => {
      if (earlier) keep(copied(earlier, day, members))
    },
    keep,
  }
}
