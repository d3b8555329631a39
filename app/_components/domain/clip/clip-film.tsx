'use client'

import { type ReactNode, useEffect } from 'react'
import { type Lost, lostBy } from './say-lost'
import type { ClipControl } from './use-clip'

interface ClipFilmProps {
  readonly clip: ClipControl
  readonly file: string
  readonly title: string
  /** Told when it does not play, and why as far as the browser tells. */
  readonly onLost: (lost: Lost) => void
  /** What is done once there is a picture; by default the start of the range is shown. */
  readonly begin?: () => void
  /** What lies over the picture, such as a `PointsOverlay`: in the film's pixels, whatever size it is shown at. */
  readonly children?: ReactNode
}

/** The film itself, with what is drawn over it. */
export function ClipFilm({ clip, file, title, onLost, begin = clip.toStart, children }: ClipFilmProps) {
  const start = () => {
    clip.measure()
    begin()
  }
  // biome-ignore lint/correctness/useExhaustiveDependencies: once: what became of the film before the page came alive
  useEffect(() => {
    const film = clip.video.current
    if (film?.error) onLost(lostBy(film.error.code))
    else if (film && film.readyState >= film.HAVE_CURRENT_DATA) start()
  }, [])
  return (
    <div className="clip-stage">
      <video
        ref={clip.video}
        className="clip-film"
        src={file}
        muted
        playsInline
        preload="auto"
        tabIndex={0}
        aria-label={title}
        onLoadedMetadata={clip.measure}
        onLoadedData={start}
        onEnded={clip.again}
        onError={({ currentTarget }) => onLost(lostBy(currentTarget.error?.code))}
      />
      {children}
    </div>
  )
}
