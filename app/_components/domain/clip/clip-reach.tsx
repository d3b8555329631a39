'use client'

import { type ReactNode, useEffect, useRef, useState } from 'react'
import { Notice } from '../../ui/notice'
import type { ClipMoment } from './clip-moment'
import { type Lost, sayLost } from './say-lost'

interface ClipReachProps {
  readonly moment: ClipMoment
  /** Whether the film is played, or opened, by the key of its page. */
  readonly keyed?: boolean
  /** Whether something rests on the film, or it only shows what is meant. */
  readonly isEvidence?: boolean
  /** Told when the film does not play. */
  readonly onLost?: ((lost: Lost) => void) | undefined
  /** Told when it is opened where it is. */
  readonly onAway?: (() => void) | undefined
  /** What plays the file, and says when it cannot. */
  readonly children: (file: string, onLost: (lost: Lost) => void) => ReactNode
}

/**
 * The way to a film. One of this server is there at once; nothing is asked of anybody else's before it is wanted. What is no
 * film file opens where it is, with its range beside it.
 */
export function ClipReach({ moment, keyed = false, isEvidence = true, onLost, onAway, children }: ClipReachProps) {
  const [wanted, setWanted] = useState(moment.host === null)
  const [lost, setLost] = useState<Lost | null>(null)
  const sheet = useRef<HTMLDivElement>(null)
  const { file, host, href, range } = moment
  // The button that asked for it is gone: the keys go on working from the film.
  useEffect(() => {
    if (wanted && host !== null) sheet.current?.querySelector('video')?.focus()
  }, [wanted, host])
  const key = keyed ? 'r' : undefined
  const away = keyed && file === null
  const lose = (by: Lost) => {
    setLost(by)
    onLost?.(by)
  }
  return (
    <div ref={sheet} className="clip-sheet">
      {lost ? <Notice tone="warning">{sayLost({ lost, host, isEvidence })}</Notice> : null}
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
          onClick={onAway}
          onAuxClick={onAway}
          className={away ? 'button' : undefined}
          data-shortcut={away ? key : undefined}
        >
          Open {range} {host === null ? 'in a new window' : `at ${host}`}
        </a>
      </p>
    </div>
  )
}
