import { useState } from 'react'
import { Dialog } from '@/app/_components/ui/dialog'
import type { RefusedItem } from '../queue/deck-queue'
import { writeRoute } from '../state/address'
import { useDeck } from './deck-context'
import { newId } from './device'
import { useItemName } from './use-item-name'

/** A refused item: what the server said and where, and the three ways on. */
export function RefusedLine({ entry: { item, answer } }: { entry: RefusedItem }) {
  const { queue, dispatch } = useDeck()
  const [leaving, setLeaving] = useState(false)
  const name = useItemName()(item)
  const sendAgain = async (): Promise<void> => {
    // An id that the server has for something else can only be refused again.
    const again = answer.code === 'same id, other content' ? { ...item, id: newId() } : undefined
    await queue.mend(item.id, again)
    if (again) dispatch({ type: 'mended', key: item.id, item: again })
  }
  const discard = async (): Promise<void> => {
    dispatch({ type: 'gone', ids: await queue.discard(item.id) })
  }
  return (
    <li className="deck-refused">
      <h3>{name}</h3>
      <p>
        {answer.message ?? 'The server refused it without a reason.'}
        {answer.field ? <span className="deck-sub"> At {answer.field}.</span> : null}
      </p>
      <p className="deck-pair">
        {item.kind === 'observation' ? (
          <a className="button" href={writeRoute({ at: 'mend', item: item.id })}>
            Change
          </a>
        ) : null}
        <button type="button" className="button" onClick={() => void sendAgain()}>
          Send again
        </button>
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
