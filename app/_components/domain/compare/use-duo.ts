'use client'

import { useCallback, useEffect, useRef, useState } from 'react'
import { type DuoShown, makeDuo } from './duo'
import type { Side, Timing } from './duo-time'

/** Two films as their one bar of buttons sees them. */
export interface DuoControl extends DuoShown {
  readonly speed: number
  readonly setSpeed: (speed: number) => void
  readonly toggle: () => void
  /** Steps by a frame; `held`: by a key that is held down. */
  readonly step: (by: 1 | -1, held?: boolean) => void
  readonly goTo: (time: number) => void
  readonly attach: (side: Side, video: HTMLVideoElement) => void
  readonly detach: (side: Side) => void
}

const nothing: DuoShown = {
  playing: false,
  time: 0,
  whole: { start: 0, end: 0 },
  shown: { first: null, second: null },
  held: { first: false, second: false },
}

/**
 * Plays two films by one timing. `at` is the instant to show, in seconds of the first film: when it changes both go there.
 * `frames` is how long each film's frames are shown, in seconds, where it is known.
 */
export function useDuo(timing: Timing, at: number, frames: Readonly<Record<Side, number | null>>): DuoControl {
  const [shown, setShown] = useState(nothing)
  const [speed, setRate] = useState(1)
  const made = useRef<ReturnType<typeof makeDuo>>(null)
  const begin = useRef({ timing, at })
  const laid = useRef(at)
  const known = useRef(frames)

  const duo = useCallback(() => {
    made.current ??= makeDuo(begin.current.timing, begin.current.at, setShown)
    return made.current
  }, [])
  useEffect(() => {
    duo().retime(timing, laid.current === at ? null : at)
    laid.current = at
  }, [duo, timing, at])
  useEffect(
    () => () => {
      made.current?.stop()
      made.current = null
    },
    [],
  )
  const attach = useCallback(
    (side: Side, video: HTMLVideoElement) => duo().attach(side, video, known.current[side]),
    [duo],
  )
  const detach = useCallback((side: Side) => duo().detach(side), [duo])

  return {
    ...shown,
    speed,
    setSpeed: (to) => {
      setRate(to)
      duo().setSpeed(to)
    },
    toggle: () => duo().toggle(),
    step: (by, held = false) => duo().step(by, held),
    goTo: (time) => duo().goTo(time),
    attach,
    detach,
  }
}
