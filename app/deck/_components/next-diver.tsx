import { writeRoute } from '../state/address'
import { nextDiver } from '../state/roster'
import { useDeck } from './deck-context'
import type { Subject } from './use-subject'

interface NextDiverProps {
  readonly subject: Subject
  readonly tone?: 'plain' | 'go'
}

/** The next diver of the squad at the same skill, one tap away: divers take turns. Nothing when there is no other. */
export function NextDiverLink({ subject: { diver, pair }, tone = 'plain' }: NextDiverProps) {
  const { roster, state } = useDeck()
  const next = nextDiver(roster, diver.id, state.squad)
  if (!next) return null
  return (
    <a
      className={tone === 'go' ? 'button button-go' : 'button'}
      href={writeRoute({ at: 'rate', diver: next.id, pair: pair.key })}
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
