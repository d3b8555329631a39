import { pairName } from '@/lib/assessment/readiness/wording'
import type { IncidentKind } from '@/lib/assessment/record'
import type { Pair } from '@/lib/curriculum/edition/curriculum'
import { useDeck } from './deck-context'

interface ContactStepsProps {
  readonly recorded: { readonly id: string; readonly what: IncidentKind }
  readonly pair: Pair
}

/** What was recorded, what it pauses, and what to do now. */
export function ContactSteps({ recorded: { id, what }, pair }: ContactStepsProps) {
  const { roster, waiting } = useDeck()
  const unsent = waiting.unsent.some((item) => item.id === id)
  const refused = waiting.refused.find(({ item }) => item.id === id)
  return (
    <>
      <p role="status" className="deck-notice">
        <b>Recorded: {what}.</b>{' '}
        {what === 'knock to the head'
          ? 'Stood down from the water at once, until the head coach clears it in writing.'
          : `${pairName(pair.key, roster)} and what rests on it are paused at once, until the head coach clears it in writing.`}{' '}
        {refused ? 'The server did not take it; it stays on this phone.' : unsent ? 'Not sent yet.' : 'Sent.'}
      </p>
      <ol className="deck-steps">
        <li>
          <b>After a knock to the head: out of the water, the emergency action plan, medical advice.</b>
        </li>
        <li>
          <b>Tell the head coach now.</b>
        </li>
        <li>Follow the facility’s rules, the governing body’s rules and local law.</li>
      </ol>
      <p>This supports, and never replaces, the judgement of a qualified coach standing on the deck.</p>
    </>
  )
}
