import { useDeck } from './deck-context'
import { LastContact } from './last-contact'
import { useHand } from './use-hand'

/** What the coach should know of this phone: a newer deck, a browser that keeps nothing, what others left here. */
export function DeviceNotices() {
  const { home, loadNewVersion } = useDeck()
  const others = home.othersWaiting
  return (
    <>
      {loadNewVersion ? (
        <p className="deck-notice">
          <button type="button" className="button button-go deck-wide" onClick={loadNewVersion}>
            New version: load it
          </button>
        </p>
      ) : null}
      {home.durable ? null : (
        <p role="note" className="deck-notice">
          This browser keeps nothing on the phone: what is unsent goes when this page is closed. Leave it open until all
          is sent, or use another browser.
        </p>
      )}
      {others > 0 ? (
        <p className="deck-sub">
          Another coach left {others === 1 ? 'one unsent entry' : `${others} unsent entries`} on this phone. Nobody else
          sees them; they go as soon as that coach signs in here.
        </p>
      ) : null}
    </>
  )
}

/** Which hand holds this phone. */
export function HandChoice() {
  const { left, change } = useHand()
  return (
    <label>
      <input type="checkbox" checked={left} onChange={(event) => change(event.target.checked)} />
      <span className="ps-2">Left-handed: keep and undo at the left thumb</span>
    </label>
  )
}

/** How fresh the deck is, and why it is not fresher. */
export function Freshness() {
  const { problem } = useDeck()
  return (
    <>
      <p className="deck-sub">
        <LastContact />
      </p>
      {problem ? <p role="alert">{problem} What is shown here is from before.</p> : null}
    </>
  )
}
