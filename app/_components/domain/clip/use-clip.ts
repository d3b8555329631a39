'use client'

import { type RefObject, useCallback, useEffect, useRef, useState } from 'react'
import { isPast, seekFor } from './frames'
import { guessed, learnFrame, seekAndSee } from './seek'

interface Range {
  readonly start: number
  readonly end: number | null
}

/** A clip as its buttons see it. */
export interface ClipControl {
  readonly video: RefObject<HTMLVideoElement | null>
  readonly playing: boolean
  readonly speed: number
  /** The time of the frame that is shown, in seconds of the film. */
  readonly shown: number
  readonly toggle: () => void
  readonly step: (by: 1 | -1) => void
  readonly setSpeed: (speed: number) => void
  readonly toStart: () => void
  /** Plays on from the start of the range where the film itself ended. */
  readonly again: () => void
}

/** Plays one film at one range: loops, slows down, and steps from frame to frame. */
export function useClip({ start, end }: Range): ClipControl {
  const video = useRef<HTMLVideoElement>(null)
  const frame = useRef<number | null>(null)
  const busy = useRef(false)
  const [playing, setPlaying] = useState(false)
  const [speed, setRate] = useState(1)
  const [shown, setShown] = useState(start)

  const goTo = useCallback(async (to: number) => {
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

  const toggle = () => {
    const film = video.current
    if (!film) return
    if (playing) film.pause()
    else film.play().catch(() => setPlaying(false))
    setPlaying(!playing)
  }

  const step = async (by: 1 | -1) => {
    const film = video.current
    if (!film || busy.current) return
    busy.current = true
    try {
      film.pause()
      setPlaying(false)
      let from = shown
      if (frame.current === null) {
        frame.current = await learnFrame(film)
        from = (await seekAndSee(film, shown + (frame.current ?? guessed) / 2)) ?? shown
      }
      const known = frame.current ?? guessed
      for (let tries = 0; tries < 4; tries++) {
        const time = await seekAndSee(film, seekFor(from, by, known, tries))
        if (time === null || time === from) continue
        setShown(time)
        break
      }
    } finally {
      busy.current = false
    }
  }

  return {
    video,
    playing,
    speed,
    shown,
    toggle,
    // A film that cannot be played says so itself, by its error.
    step: (by) => void step(by).catch(() => setPlaying(false)),
    setSpeed: (rate) => {
      if (video.current) video.current.playbackRate = rate
      setRate(rate)
    },
    toStart: () => void goTo(start),
    again: () => {
      const film = video.current
      if (!film || !playing) return
      film.currentTime = start
      film.play().catch(() => setPlaying(false))
    },
  }
}
