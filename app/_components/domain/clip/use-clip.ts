'use client'

import { type RefObject, useEffect, useRef, useState } from 'react'
import { type Clip, type ClipShown, makeClip, type StillFrame } from './make-clip'

interface Range {
  readonly start: number
  readonly end: number | null
}

/** A film's own picture, in its pixels. */
export interface FilmSize {
  readonly width: number
  readonly height: number
}

/** A clip as its buttons see it. Two of them may stand on one page: nothing here is shared. */
export interface ClipControl extends ClipShown {
  readonly video: RefObject<HTMLVideoElement | null>
  readonly speed: number
  /** Null until the film says it. */
  readonly size: FilmSize | null
  readonly toggle: () => void
  readonly pause: () => void
  /** Whether a picture stands there that nothing is about to change. */
  readonly stands: () => boolean
  /** Steps by a frame; `held`: by a key that is held down. */
  readonly step: (by: 1 | -1, held?: boolean) => void
  readonly setSpeed: (speed: number) => void
  readonly toStart: () => void
  /** Shows the frame that begins at a time, to the millisecond; `lasts` is how long it is shown, where that was kept with it. */
  readonly goTo: (seconds: number, lasts?: number | null) => void
  /** Stops after all that was asked before, and gives the frame that then stands; null when none is there yet. */
  readonly hold: () => Promise<StillFrame | null>
  /** Plays from the start of the range. */
  readonly replay: () => void
  /** Plays on from the start of the range where the film itself ended. */
  readonly again: () => void
  /** Takes the size from the film, once it is known. */
  readonly measure: () => void
}

/** Plays one film at one range: loops, slows down, and steps from frame to frame. */
export function useClip({ start, end }: Range): ClipControl {
  const video = useRef<HTMLVideoElement>(null)
  const made = useRef<Clip>(null)
  const [shown, setShown] = useState<ClipShown>({ playing: false, shown: start, frame: null })
  const [size, setSize] = useState<FilmSize | null>(null)
  const [speed, setRate] = useState(1)

  /** The film under control, from when it is first asked of: its element may wake up before this does. */
  const clip = (): Clip | null => {
    if (video.current) made.current ??= makeClip(video.current, { start, end }, setShown)
    return made.current
  }
  // biome-ignore lint/correctness/useExhaustiveDependencies: what was made is of one range
  useEffect(
    () => () => {
      made.current?.stop()
      made.current = null
    },
    [start, end],
  )

  return {
    ...shown,
    video,
    speed,
    size,
    toggle: () => clip()?.toggle(),
    pause: () => clip()?.pause(),
    stands: () => clip()?.stands() ?? false,
    step: (by, held = false) => clip()?.step(by, held),
    setSpeed: (rate) => {
      clip()?.setSpeed(rate)
      setRate(rate)
    },
    toStart: () => clip()?.toStart(),
    goTo: (seconds, lasts = null) => clip()?.goTo(seconds, lasts),
    hold: async () => (await clip()?.hold()) ?? null,
    replay: () => clip()?.replay(),
    again: () => clip()?.again(),
    measure: () => {
      const film = video.current
      if (film?.videoWidth) setSize({ width: film.videoWidth, height: film.videoHeight })
    },
  }
}
