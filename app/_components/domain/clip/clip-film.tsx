'use client'

import type { ReactNode } from 'react'
import type { ClipControl } from './use-clip'

interface ClipFilmProps {
  readonly clip: ClipControl
  readonly file: string
  readonly title: string
  readonly onLost: () => void
  /** What lies over the picture, such as a `PointsOverlay`: in the film's pixels, whatever size it is shown at. */
  readonly children?: ReactNode
}

/** The film itself, with what is drawn over it. */
export function ClipFilm({ clip, file, title, onLost, children }: ClipFilmProps) {
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
        onLoadedData={() => {
          clip.measure()
          clip.toStart()
        }}
        onEnded={clip.again}
        onError={onLost}
      />
      {children}
    </div>
  )
}
