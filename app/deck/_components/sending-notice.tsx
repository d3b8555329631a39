import { useDeck } from './deck-context'

/** Said where a coach can act on it: sign in elsewhere and come back, so that what is kept here stays. */
export function SendingNotice() {
  const { waiting, queue } = useDeck()
  if (waiting.sending !== 'signed out') return null
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
