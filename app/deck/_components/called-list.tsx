import { DiveNumber } from '@/app/_components/domain/dive/dive-number'
import { placeFacts } from '@/lib/curriculum/place'
import { writeRoute } from '../state/address'
import { callsUnderWay, nextNumber } from '../state/deck-state'
import { useDeck } from './deck-context'

/** Calls that are not rated to their end, one tap away: divers take turns. Of one diver, or of all. */
export function CalledList({ diver }: { diver?: string }) {
  const { roster, state } = useDeck()
  const lines = callsUnderWay(state, diver).flatMap((open) => {
    const pair = roster.curriculum.pairs.get(`${open.call.skill}@${open.call.place}`)
    const who = roster.divers.get(open.call.diver)
    return pair && who ? [{ open, pair, who }] : []
  })
  if (lines.length === 0) return null
  return (
    <section aria-label="Called">
      <h2 className="deck-head">Called</h2>
      <ul className="deck-list">
        {lines.map(({ open, pair, who }) => (
          <li key={open.call.id}>
            <a className="deck-line" href={writeRoute({ at: 'rate', diver: who.id, pair: pair.key })}>
              <span className="deck-line-main">
                {who.shortName} {pair.skill.dive ? <DiveNumber>{pair.skill.dive}</DiveNumber> : pair.skill.title}
                <span className="deck-line-place">{placeFacts[pair.holding.place].label}</span>
              </span>
              <span className="deck-sub">
                attempt {nextNumber(open)} of {open.call.count} is next
              </span>
            </a>
          </li>
        ))}
      </ul>
    </section>
  )
}
