import { sentence } from '@/lib/assessment/readiness/grammar'
import { useDeck } from './deck-context'
import { useItemName } from './use-item-name'

/** What the server has but for a part, e.g. a video without consent. */
function KeptWithout() {
  const { waiting, queue } = useDeck()
  const nameOf = useItemName()
  return (
    <div className="deck-notice" role="alert">
      {waiting.keptWithout.map(({ item, message }) => (
        <p key={item.id}>
          {nameOf(item)}: {sentence(message)}
        </p>
      ))}
      <button type="button" className="button" onClick={() => queue.told()}>
        Read
      </button>
    </div>
  )
}

/** What a coach must act on or know: no room to keep what she recorded, a sign-in before it can be sent, a part left out. */
export function SendingNotice() {
  const { waiting, queue } = useDeck()
  if (waiting.unkept !== null)
    return (
      <p className="deck-notice" role="alert">
        {waiting.unkept}
      </p>
    )
  if (waiting.sending !== 'signed out') return waiting.keptWithout.length > 0 ? <KeptWithout /> : null
  return (
    <div className="deck-notice" role="alert">
      <p>
        {waiting.problem} {waiting.unsent.length} {waiting.unsent.length === 1 ? 'item is' : 'items are'} kept here.
      </p>
      <p className="deck-pair">
        <a className="button" href="/account/sign-in?next=/deck" target="_blank" rel="noopener">
          Sign in on a new page
        </a>
        <button type="button" className="button" onClick={() => void queue.sendNow()}>
          Send again
        </button>
      </p>
    </div>
  )
}
