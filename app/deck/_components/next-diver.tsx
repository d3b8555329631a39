import { writeRoute } from '../state/address'
import { nextDiver } from '../state/roster'
import { useDeck } from './deck-context'
import type { Subject } from './use-subject'

/** The next diver of the squad at the same skill, one tap away, and the whole squad. */
export function NextDiver({ subject: { diver, pair } }: { subject: Subject }) {
  const { roster, state } = useDeck()
  const next = nextDiver(roster, diver.id, state.squad)
  return (
    <p className="deck-pair">
      {next ? (
        <a className="button button-go" href={writeRoute({ at: 'rate', diver: next.id, pair: pair.key })}>
          Next: {next.shortName}
        </a>
      ) : null}
      <a className="button" href={writeRoute({ at: 'squads' })}>
        All divers
      </a>
    </p>
  )
}
