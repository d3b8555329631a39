import { writeRoute } from '../state/address'
import { usePlan } from './use-plan'

/** Leads to the day's plan: to make it, or to change it. */
export function PlanLink({ squad }: { squad: string }) {
  const { kept } = usePlan(squad)
  return (
    <p>
      <a className="button" href={writeRoute({ at: 'plan', squad })}>
        {kept ? 'Change today’s plan' : 'Plan today: who is here, what to watch'}
      </a>
    </p>
  )
}
