import { useDeck } from './deck-context'

/** What a coach must act on: there is no room to keep what she recorded, or she has to sign in before it can be sent. */
export function SendingNotice() {
  const { waiting, queue } = useDeck()
  if (waiting.unkept !== null)
    return (
      <p className="deck-notice" role="alert">
        {waiting.unkept}
      </p>
    )
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
