import { useState } from 'react'
import { Dialog } from '@/app/_components/ui/dialog'
import type { DeckItem } from '@/lib/assessment/deck/contract'
import { sentence } from '@/lib/assessment/readiness/grammar'
import { type RefusedItem, succeeds } from '../queue/deck-queue'
import { parentsOf } from '../queue/lineage'
import { writeRoute } from '../state/address'
import { useDeck } from './deck-context'
import { newId } from './device'
import { useItemName } from './use-item-name'

/** A refused item: what the server said, and the ways on. */
export function RefusedLine({ entry: { item, answer } }: { entry: RefusedItem }) {
  const { queue, dispatch, waiting } = useDeck()
  const [leaving, setLeaving] = useState(false)
  const name = useItemName()(item)
  const follows = waiting.refused.some((other) => parentsOf(item).includes(other.item.id))
  const mend = async (changed: DeckItem): Promise<void> => {
    if (await succeeds(queue.mend(item.id, changed))) dispatch({ type: 'mended', key: item.id, item: changed })
  }
  // An id that the server has for something else can only be refused again.
  const id = answer.code === 'same id, other content' ? newId() : item.id
  const discard = async (): Promise<void> => {
    const gone = queue.discard(item.id)
    if (await succeeds(gone)) dispatch({ type: 'gone', ids: await gone })
  }
  return (
    <li className="deck-refused">
      <h3>{name}</h3>
      <p>
        {follows
          ? 'It goes along as soon as what it belongs to is mended.'
          : sentence(answer.message ?? 'the server refused it without a reason')}
      </p>
      <p className="deck-pair">
        {item.kind === 'observation' ? (
          <a className="button" href={writeRoute({ at: 'mend', item: item.id })}>
            Change
          </a>
        ) : null}
        {follows ? null : (
          <button type="button" className="button" onClick={() => void mend({ ...item, id })}>
            Send again
          </button>
        )}
        {item.kind === 'attempt' && item.call && !follows ? (
          <button type="button" className="button" onClick={() => void mend({ ...item, id, call: null })}>
            Send as uncalled
          </button>
        ) : null}
        <button type="button" className="button button-stop" onClick={() => setLeaving(true)}>
          Discard
        </button>
      </p>
      <Dialog title="Discard it?" open={leaving} onClose={() => setLeaving(false)}>
        <p className="pb-3">{name}, and everything that rests on it, goes for good. Nothing of it is stored.</p>
        <div className="deck-choices">
          <button type="button" className="button button-stop" onClick={() => void discard()}>
            Discard for good
          </button>
          <button type="button" className="button" onClick={() => setLeaving(false)}>
            Keep it here
          </button>
        </div>
      </Dialog>
    </li>
  )
}
