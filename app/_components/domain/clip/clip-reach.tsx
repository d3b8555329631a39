'use client'

import { type ReactNode, useState } from 'react'
import { Notice } from '../../ui/notice'
import type { ClipMoment } from './clip-moment'

const notReachable = (host: string | null): string =>
  `Evidence not reachable: ${host ?? 'this server'} does not give the film now. The moment stays on the record with all that rests on it. Try again later, or ask whoever filmed it.`

interface ClipReachProps {
  readonly moment: ClipMoment
  /** Whether the film is played, or opened, by the key of its page. */
  readonly keyed?: boolean
  /** Told when the film does not open. */
  readonly onLost?: (() => void) | undefined
  /** What plays the file, and says when it cannot be had. */
  readonly children: (file: string, onLost: () => void) => ReactNode
}

/**
 * The way to a film. One of this server is there at once; nothing is asked of anybody else's before it is wanted. What is no
 * film file opens where it is, with its range beside it.
 */
export function ClipReach({ moment, keyed = false, onLost, children }: ClipReachProps) {
  const [wanted, setWanted] = useState(moment.host === null)
  const [lost, setLost] = useState(false)
  const { file, host, href, range } = moment
  const key = keyed ? 'r' : undefined
  const away = keyed && file === null
  const lose = () => {
    setLost(true)
    onLost?.()
  }
  return (
    <div className="clip-sheet">
      {lost ? <Notice tone="warning">{notReachable(host)}</Notice> : null}
      {file !== null && wanted && !lost ? children(file, lose) : null}
      {file !== null && !wanted ? (
        <p>
          <button type="button" className="button button-go" onClick={() => setWanted(true)} data-shortcut={key}>
            Play it here, from {host}
          </button>
        </p>
      ) : null}
      <p className="clip-away">
        <a
          href={href}
          rel="noreferrer noopener"
          target="_blank"
          className={away ? 'button' : undefined}
          data-shortcut={away ? key : undefined}
        >
          Open {range} {host === null ? 'in a new window' : `at ${host}`}
        </a>
      </p>
    </div>
  )
}
