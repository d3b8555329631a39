'use client'

import { type ReactNode, useState } from 'react'
import { Notice } from '../../ui/notice'
import type { ClipMoment } from './clip-moment'

const notReachable = (host: string | null): string =>
  `Evidence not reachable: ${host ?? 'this server'} does not give the film now. The moment stays on the record with all that rests on it. Try again later, or ask whoever filmed it.`

interface ClipReachProps {
  readonly moment: ClipMoment
  /** What plays the file, and says when it cannot be had. */
  readonly children: (file: string, onLost: () => void) => ReactNode
}

/**
 * The way to a film. One of this server is there at once; nothing is asked of anybody else's before it is wanted. What is no
 * film file opens where it is, with its range beside it.
 */
export function ClipReach({ moment, children }: ClipReachProps) {
  const [wanted, setWanted] = useState(moment.host === null)
  const [lost, setLost] = useState(false)
  const { file, host, href, range } = moment
  return (
    <div className="clip-sheet">
      {lost ? <Notice tone="warning">{notReachable(host)}</Notice> : null}
      {file !== null && wanted && !lost ? children(file, () => setLost(true)) : null}
      {file !== null && !wanted ? (
        <p>
          <button type="button" className="button button-go" onClick={() => setWanted(true)}>
            Play it here, from {host}
          </button>
        </p>
      ) : null}
      <p className="clip-away">
        <a href={href} rel="noreferrer noopener" target="_blank">
          Open {range} {host === null ? 'in a new window' : `at ${host}`}
        </a>
      </p>
    </div>
  )
}
