'use client'

import { type RefObject, useCallback, useEffect, useRef, useState } from 'react'
import { isPast, seekFor } from './frames'
import { guessed, learnFrame, seekAndSee } from './seek'

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
export interface ClipControl {
  readonly video: RefObject<HTMLVideoElement | null>
  readonly playing: boolean
  readonly speed: number
  /** The time of the frame that is shown, in seconds of the film. */
  readonly shown: number
  /** How long one frame is shown, in seconds; null until it was learned, and where it cannot be. */
  readonly frame: number | null
  /** Null until the film says it. */
  readonly size: FilmSize | null
  readonly toggle: () => void
  readonly pause: () => void
  readonly step: (by: 1 | -1) => void
  readonly setSpeed: (speed: number) => void
  readonly toStart: () => void
  /** Shows the frame that begins at a time, to the millisecond; `lasts` is how long it is shown, where that was kept with it. */
  readonly goTo: (seconds: number, lasts?: number | null) => Promise<void>
  /** Learns how long a frame is shown and comes back to the one that was; null where it cannot be learned. */
  readonly learn: () => Promise<number | null>
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
  const busy = useRef(false)
  const [frame, setFrame] = useState<number | null>(null)
  const [size, setSize] = useState<FilmSize | null>(null)
  const [playing, setPlaying] = useState(false)
  const [speed, setRate] = useState(1)
  const [shown, setShown] = useState(start)

  const show = useCallback(async (to: number) => {
    if (!video.current) return
    const time = await seekAndSee(video.current, to)
    if (time !== null) setShown(time)
  }, [])

  useEffect(() => {
    const film = video.current
    if (!film || !playing) return
    let call = 0
    const watch = (_: number, { mediaTime }: { mediaTime: number }) => {
      setShown(mediaTime)
      if (isPast(mediaTime, end)) film.currentTime = start
      call = film.requestVideoFrameCallback(watch)
    }
    call = film.requestVideoFrameCallback(watch)
    return () => film.cancelVideoFrameCallback(call)
  }, [playing, start, end])

  const pause = () => {
    video.current?.pause()
    setPlaying(false)
  }

  const toggle = () => {
    const film = video.current
    if (!film) return
    if (playing) film.pause()
    else film.play().catch(() => setPlaying(false))
    setPlaying(!playing)
  }

  /** The time of a frame, learned the first time, and the frame shown afterwards: the one from before, as near as can be. */
  const learned = async (film: HTMLVideoElement): Promise<{ known: number | null; from: number }> => {
    if (frame !== null) return { known: frame, from: shown }
    const known = await learnFrame(film)
    setFrame(known)
    const from = (await seekAndSee(film, shown + (known ?? guessed) / 2)) ?? shown
    setShown(from)
    return { known, from }
  }

  /** One thing at a time: a key held down would seek before the last seek has shown its frame. */
  const alone = async <Result>(work: (film: HTMLVideoElement) => Promise<Result>): Promise<Result | null> => {
    const film = video.current
    if (!film || busy.current) return null
    busy.current = true
    try {
      pause()
      return await work(film)
    } finally {
      busy.current = false
    }
  }

  const step = (by: 1 | -1) =>
    alone(async (film) => {
      const { known, from } = await learned(film)
      for (let tries = 0; tries < 4; tries++) {
        const time = await seekAndSee(film, seekFor(from, by, known ?? guessed, tries))
        if (time === null || time === from) continue
        setShown(time)
        break
      }
    })

  const replay = () => {
    const film = video.current
    if (!film) return
    film.currentTime = start
    film.play().catch(() => setPlaying(false))
    setPlaying(true)
  }

  return {
    video,
    playing,
    speed,
    shown,
    frame,
    size,
    toggle,
    pause,
    // A film that cannot be played says so itself, by its error.
    step: (by) => void step(by).catch(() => setPlaying(false)),
    setSpeed: (rate) => {
      if (video.current) video.current.playbackRate = rate
      setRate(rate)
    },
    toStart: () => void show(start),
    goTo: async (seconds, lasts) => {
      pause()
      // Into the middle of the frame; where its length is not known, past what rounding to a millisecond can lose.
      await show(seconds + (lasts ?? frame ?? 0.004) / 2)
    },
    learn: async () => (await alone((film) => learned(film)).catch(() => null))?.known ?? frame,
    replay,
    again: () => {
      if (playing) replay()
    },
    measure: () => {
      const film = video.current
      if (film?.videoWidth) setSize({ width: film.videoWidth, height: film.videoHeight })
    },
  }
}
