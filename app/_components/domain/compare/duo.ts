import { seekFor } from '../clip/frames'
import { learnFrame } from '../clip/seek'
import { type Film, followFilm, frameOf, jumpTo } from './film'
import { correct } from './pace'
import { type Span, shows, type TimeMap, wholeSpan, within } from './time-map'

export const sides = ['first', 'second'] as const
export type Side = (typeof sides)[number]

/** How the films run beside each other; an `end` of null is the film's own. */
export interface Timing {
  readonly map: TimeMap
  readonly spans: Readonly<Record<Side, { readonly start: number; readonly end: number | null }>>
}

/** What both show: the time in seconds of the first film, and of each the time of its frame, or null while it is not there. */
export interface DuoShown {
  readonly playing: boolean
  readonly time: number
  readonly whole: Span
  readonly shown: Readonly<Record<Side, number | null>>
  /** Held at its first or last frame, since the moment does not reach further. */
  readonly held: Readonly<Record<Side, boolean>>
}

// Into the frame that begins there: films write times down to the millisecond only.
const inside = 0.002
// Seconds to show of a film that does not say how long it is.
const endless = 600

/** Two films under one control. The one that shows the instant leads, the first before the second; the other keeps beside it. */
export function makeDuo(begin: Timing, at: number, tell: (shown: DuoShown) => void) {
  const films: Record<Side, Film | null> = { first: null, second: null }
  let [timing, time, speed, playing, tick] = [begin, at, 1, false, 0]
  let wanted: number | null = null
  let settling: Promise<void> | null = null
  let stepping = false

  const spanOf = (side: Side): Span => {
    const { start, end } = timing.spans[side]
    const length = films[side]?.video.duration ?? start
    return { start, end: end ?? (Number.isFinite(length) ? length : start + endless) }
  }
  const timeIn = (side: Side, of = time) => (side === 'first' ? of : timing.map.toSecond(of))
  const timeFrom = (side: Side, of: number) => (side === 'first' ? of : timing.map.toFirst(of))
  const paceOf = (side: Side) => speed * (side === 'first' ? 1 : timing.map.slopeAt(time))
  const showing = (side: Side) => films[side] !== null && shows(spanOf(side), timeIn(side))
  const leader = () => sides.find(showing) ?? sides.find((side) => films[side]) ?? null
  const whole = (): Span => {
    const [first, second] = [spanOf('first'), spanOf('second')]
    if (films.second === null) return first
    if (films.first) return wholeSpan(timing.map, first, second)
    return { start: timing.map.toFirst(second.start), end: timing.map.toFirst(second.end) }
  }
  const changed = () =>
    tell({
      playing,
      time,
      whole: whole(),
      shown: { first: films.first?.shown ?? null, second: films.second?.shown ?? null },
      held: { first: films.first !== null && !showing('first'), second: films.second !== null && !showing('second') },
    })
  const place = async (side: Side) => {
    const film = films[side]
    if (film) await jumpTo(film, within(spanOf(side), timeIn(side)) + inside)
  }

  /** Shows an instant in both. The last one that was asked for wins. */
  function goTo(to: number): Promise<void> {
    wanted = to
    const settle = async () => {
      while (wanted !== null) {
        time = within(whole(), wanted)
        wanted = null
        await Promise.all(sides.map(place))
        changed()
      }
      settling = null
    }
    settling ??= settle()
    return settling
  }

  function pace(film: Film, to: number): void {
    if (Math.abs(film.video.playbackRate - to) > to / 100) film.video.playbackRate = to
  }

  function keepBeside(side: Side, film: Film): void {
    const { video } = film
    const span = spanOf(side)
    if (film.jumping) return
    const target = timeIn(side)
    if (!shows(span, target)) {
      video.pause()
      if (Math.abs(film.shown - within(span, target)) > 2 * frameOf(film)) void place(side)
    } else if (video.paused) {
      // One that has ended would begin again.
      if (!video.ended) start(side, film)
    } else {
      const act = correct({ at: video.currentTime, target, pace: paceOf(side) }, frameOf(film), film.jump)
      if (act.kind === 'seek') void jumpTo(film, within(span, act.to))
      else pace(film, act.pace)
    }
  }

  // Whatever keeps a film from playing, it says so by its own error.
  function start(side: Side, { video }: Film): void {
    video.playbackRate = Math.max(1 / 16, paceOf(side))
    video.play().catch(() => {})
  }

  function run(): void {
    const side = leader()
    const film = side && films[side]
    if (!side || !film) {
      pause()
      return
    }
    if (film.video.ended) time = timeFrom(side, spanOf(side).end)
    else if (!film.jumping && !film.video.paused) time = timeFrom(side, film.video.currentTime)
    if (time >= whole().end - 2 * inside || !sides.some(showing)) {
      pauseFilms()
      void goTo(whole().start).then(() => playing && begins())
      return
    }
    for (const one of sides) {
      const other = films[one]
      if (!other) continue
      if (one !== side) keepBeside(one, other)
      else if (other.video.ended) continue
      else if (other.video.paused && !other.jumping) start(one, other)
      else pace(other, Math.max(1 / 16, paceOf(one)))
    }
    changed()
    tick = requestAnimationFrame(run)
  }

  function begins(): void {
    for (const side of sides) {
      const film = films[side]
      if (film && showing(side)) start(side, film)
    }
    tick = requestAnimationFrame(run)
  }
  function pauseFilms(): void {
    cancelAnimationFrame(tick)
    for (const side of sides) films[side]?.video.pause()
  }
  function pause(): void {
    pauseFilms()
    if (!playing) return
    playing = false
    const side = leader()
    const film = side && films[side]
    void goTo(side && film && showing(side) ? timeFrom(side, film.shown) : time)
  }
  async function play(): Promise<void> {
    if (playing || !leader()) return
    playing = true
    changed()
    await settling
    if (playing) begins()
  }

  async function step(by: 1 | -1): Promise<void> {
    if (stepping) return
    stepping = true
    try {
      pause()
      await settling
      const side = leader()
      const film = side && films[side]
      if (!side || !film) return
      if (film.frame === null) {
        film.frame = await learnFrame(film.video)
        await goTo(time)
      }
      const from = film.shown
      for (let tries = 0; tries < 4 && film.shown === from; tries++)
        await jumpTo(film, seekFor(from, by, frameOf(film), tries))
      await goTo(timeFrom(side, film.shown))
    } finally {
      stepping = false
    }
  }

  return {
    /** A film can be played; `frame` is how long its frames are shown, where that is known. */
    attach: (side: Side, video: HTMLVideoElement, frame: number | null) => {
      films[side]?.stop()
      films[side] = followFilm(video, frame, () => {
        if (!playing) changed()
      })
      void goTo(time)
    },
    detach: (side: Side) => {
      films[side]?.stop()
      films[side] = null
      changed()
    },
    retime: (to: Timing, show: number | null) => {
      timing = to
      if (!playing || show !== null) void goTo(show ?? time)
    },
    setSpeed: (to: number) => {
      speed = to
    },
    toggle: () => (playing ? pause() : void play()),
    step: (by: 1 | -1) => void step(by),
    goTo: (to: number) => {
      pause()
      void goTo(to)
    },
    stop: () => {
      pauseFilms()
      for (const side of sides) films[side]?.stop()
    },
  }
}
