import { writeRoute } from '../state/address'
import { useDeck } from './deck-context'
import { RefusedLine } from './refused-line'
import { SendingNotice } from './sending-notice'
import { Top } from './top'
import { useItemName } from './use-item-name'
import { when } from './when'

/** What the server does not have yet: what it refused, to be mended, and what waits. */
export function UnsentScreen() {
  const { waiting, queue, home } = useDeck()
  const { unsent, refused, problem, lastSentAt, sending } = waiting
  const nameOf = useItemName()
  return (
    <>
      <Top back={{ to: { at: 'squads' }, label: 'Back to the divers' }}>
        <h1 className="text-18">Unsent</h1>
      </Top>
      <main id="main" className="deck-page">
        <SendingNotice />
        {refused.length > 0 ? (
          <section aria-label="Needs mending">
            <h2 className="deck-head">Needs mending</h2>
            <ul className="deck-list">
              {refused.map((entry) => (
                <RefusedLine key={entry.item.id} entry={entry} />
              ))}
            </ul>
          </section>
        ) : null}
        <section aria-label="Waiting to be sent">
          <h2 className="deck-head">Waiting to be sent</h2>
          {unsent.length > 0 ? (
            <>
              <ul className="deck-list">
                {unsent.map((item) => (
                  <li key={item.id} className="deck-line">
                    {nameOf(item)}
                  </li>
                ))}
              </ul>
              <p className="deck-sub pb-3">
                {problem}{' '}
                {home.durable
                  ? 'They are kept on this phone until the server has them, also when this page is closed.'
                  : 'They are kept on this page until the server has them: do not close it.'}
              </p>
              <button
                type="button"
                className="button button-go deck-wide"
                disabled={sending === 'sending'}
                onClick={() => void queue.sendNow()}
              >
                Send now
              </button>
            </>
          ) : (
            <p className="py-2">
              Nothing waits. {lastSentAt === null ? '' : `The server last answered ${when(lastSentAt)}.`}
            </p>
          )}
        </section>
        <p className="deck-pair">
          <a className="button" href={writeRoute({ at: 'squads' })}>
            To the divers
          </a>
        </p>
      </main>
    </>
  )
}
