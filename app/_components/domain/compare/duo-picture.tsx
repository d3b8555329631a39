'use client'

import { type CSSProperties, type ReactNode, useEffect, useRef } from 'react'
import { type Lost, lostBy } from '../clip/say-lost'
import type { Side } from './duo-time'
import type { Size } from './placement'
import type { DuoControl } from './use-duo'

interface DuoPictureProps {
  readonly side: Side
  readonly file: string
  readonly title: string
  readonly duo: Pick<DuoControl, 'attach' | 'detach'>
  readonly size: Size | null
  readonly onSize: (size: Size) => void
  readonly onLost: (lost: Lost) => void
  /** How it lies over the other. */
  readonly laid?: CSSProperties
  /** How much of the film shows, from 0 to 1; what is drawn over it always does. */
  readonly strength: number
  readonly mark: string
  readonly children?: ReactNode
}

/** One of the two films, with what is drawn over it. */
export function DuoPicture({
  side,
  file,
  title,
  duo,
  size,
  onSize,
  onLost,
  laid,
  strength,
  mark,
  children,
}: DuoPictureProps) {
  const video = useRef<HTMLVideoElement>(null)
  const { attach, detach } = duo
  const told = useRef({ onSize, onLost })
  told.current = { onSize, onLost }
  useEffect(() => {
    const film = video.current
    if (!film) return
    const ready = () => {
      told.current.onSize({ width: film.videoWidth, height: film.videoHeight })
      attach(side, film)
    }
    const gone = () => told.current.onLost(lostBy(film.error?.code))
    // It may have come, or failed to, before the page woke up.
    if (film.error) gone()
    else if (film.readyState >= HTMLMediaElement.HAVE_CURRENT_DATA) ready()
    film.addEventListener('loadeddata', ready)
    film.addEventListener('error', gone)
    return () => {
      film.removeEventListener('loadeddata', ready)
      film.removeEventListener('error', gone)
      detach(side)
    }
  }, [side, attach, detach])
  return (
    <div
      className="duo-picture"
      data-side={side}
      style={{ '--shape': size ? size.width / size.height : 4 / 3 } as CSSProperties}
    >
      <div className="duo-laid" style={laid}>
        <video
          ref={video}
          className="duo-film"
          style={{ opacity: strength }}
          src={file}
          muted
          playsInline
          preload="auto"
          tabIndex={0}
          aria-label={title}
        />
        {children}
      </div>
      <span className="duo-which" aria-hidden="true">
        {mark}
      </span>
    </div>
  )
}
