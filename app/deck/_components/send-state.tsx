import type { QueueState } from '../queue/deck-queue'
import { writeRoute } from '../state/address'
import { useDeck } from './deck-context'
import { useOnline } from './use-online'
import { clock } from './when'

function connection({ sending }: QueueState, online: boolean): string {
  if (sending === 'signed out') return 'signed out'
  if (!online || sending === 'waiting') return 'no connection'
  return sending === 'sending' ? 'sending' : 'connected'
}

/** Connection, what is unsent and when the server last took something, always in sight; leads to the list. */
export function SendState() {
  const { waiting } = useDeck()
  const line = connection(waiting, useOnline())
  const [unsent, refused] = [waiting.unsent.length, waiting.refused.length]
  const trouble = refused > 0 || line === 'signed out' || line === 'no connection'
  return (
    <a className={trouble ? 'deck-send deck-send-trouble' : 'deck-send'} href={writeRoute({ at: 'unsent' })}>
      <span>{line}</span>
      <strong>{refused > 0 ? `${refused} to mend` : unsent > 0 ? `${unsent} unsent` : 'all sent'}</strong>
      {waiting.lastSentAt === null ? null : <small>sent {clock(waiting.lastSentAt)}</small>}
    </a>
  )
}
