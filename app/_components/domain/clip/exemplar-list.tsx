'use client'

import { useState } from 'react'
import type { ClipMoment } from './clip-moment'
import { ClipPlayer } from './clip-player'

/** A moment named as showing what stands beside it. */
export interface ExemplarView {
  readonly id: string
  /** What it is a moment of: "101B at 1 m, as Bearings asks it". */
  readonly label: string
  readonly clip: ClipMoment
  /** Its own page, for coaches of the diver's club. */
  readonly href: string | null
}

function OneExemplar({ exemplar }: { exemplar: ExemplarView }) {
  const [open, setOpen] = useState(false)
  const { label, clip, href } = exemplar
  return (
    <li>
      <details className="fold exemplar" onToggle={(event) => setOpen(event.currentTarget.open)}>
        <summary>
          <span className="text-13">See it: {label}</span>
        </summary>
        <div className="pt-2">
          {open ? (
            <ClipPlayer moment={clip} isEvidence={false} />
          ) : (
            <a href={clip.href} rel="noreferrer noopener" target="_blank">
              Open {clip.range}
            </a>
          )}
          {href ? <a href={href}>Its own page</a> : null}
        </div>
      </details>
    </li>
  )
}

/** Exemplars, each played where it stands once it is opened; no film is asked for before. */
export function ExemplarList({ exemplars }: { exemplars: readonly ExemplarView[] }) {
  if (exemplars.length === 0) return null
  return (
    <ul className="no-print pb-2" aria-label="Exemplars">
      {exemplars.map((exemplar) => (
        <OneExemplar key={exemplar.id} exemplar={exemplar} />
      ))}
    </ul>
  )
}
