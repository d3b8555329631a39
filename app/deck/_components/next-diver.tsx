import { writeRoute } from '../state/address'
import { dayOf, findPlan } from '../state/plan'
import { nextDiver, rotationOf } from '../state/roster'
import { useDeck } from './deck-context'
import type { Subject } from './use-subject'

interface NextDiverProps {
  readonly subject: Subject
  readonly tone?: 'plain' | 'go'
}

/** The next diver who is here, at the same skill or at what is planned for her, one tap away. Nothing when there is no other. */
export function NextDiverLink({ subject: { diver, pair }, tone = 'plain' }: NextDiverProps) {
  const { roster, state } = useDeck()
  const squad = rotationOf(roster, diver.id, state.squad)
  const plan = squad === null ? null : findPlan(state.plans, squad, dayOf(Date.now()))
  const next = nextDiver(roster, diver.id, squad, plan?.here)
  if (!next) return null
  const planned = plan?.watch[next.id] ?? []
  const nextPair = planned.includes(pair.key) ? pair.key : (planned[0] ?? pair.key)
  return (
    <a
      className={tone === 'go' ? 'button button-go' : 'button'}
      href={writeRoute({ at: 'rate', diver: next.id, pair: nextPair })}
    >
      Next: {next.shortName}
    </a>
  )
}

/** The next diver, and the whole squad. */
export function NextDiver({ subject }: NextDiverProps) {
  return (
    <p className="deck-pair">
      <NextDiverLink subject={subject} tone="go" />
      <a className="button" href={writeRoute({ at: 'squads' })}>
        All divers
      </a>
    </p>
  )
}
