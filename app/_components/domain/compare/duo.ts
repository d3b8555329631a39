import { followFilm, learn, standing, stepFrame } from '../clip/film'
import { makeRun } from './duo-run'
import { type DuoState, place, timeOf } from './duo-state'
import { type Side, sides, type Timing } from './duo-time'
import { type Span, within } from './time-map'

/** What both show: the time in seconds of the first film, and of each the time of its frame, or null while it is not there. */
export interface DuoShown {
  readonly playing: boolean
  readonly time: number
  readonly whole: Span
  readonly shown: Readonly<Record<Side, number | null>>
  /** Held at its first or last frame, since the moment does not reach further. */
  readonly held: Readonly<Record<Side, boolean>>
}

/** What was asked for and is not done yet: an instant to show, then frames to step by. */
interface Wish {
  readonly to?: number
  readonly by?: number
}

// A film whose host hangs does not hold the other for longer, in milliseconds.
const patience = 2000
// Steps that wait while both are on their way.
const mostSteps = 4

/** Two films under one control. The one that shows the instant leads, the first before the second; the other keeps beside it. */
export function makeDuo(begin: Timing, at: number, tell: (shown: DuoShown) => void) {
  const duo: DuoState = { films: { first: null, second: null }, timing: begin, time: at, speed: 1 }
  const { films } = duo
  let playing = false
  // Counts how often playing was begun or ended: what waited for both to be there and is no longer the last gives up.
  let round = 0
  let wish: Wish | null = null
  let settling: Promise<void> | null = null
  const run = makeRun(duo, changed, (onwards) => void playFrom(onwards))

  function changed(): void {
    const time = timeOf(duo)
    const isHeld = (side: Side) => films[side] !== null && !time.shown(side, duo.time)
    tell({
      playing,
      time: duo.time,
      whole: time.whole,
      shown: { first: films.first?.shown ?? null, second: films.second?.shown ?? null },
      held: { first: isHeld('first'), second: isHeld('second') },
    })
  }
  const leading = () => {
    const side = timeOf(duo).leader(duo.time)
    const film = side && films[side]
    return side && film ? { side, film } : null
  }

  async function show(to: number): Promise<void> {
    duo.time = within(timeOf(duo).whole, to)
    const late = new Promise((resolve) => setTimeout(resolve, patience))
    await Promise.race([Promise.all(sides.map((side) => place(duo, side))), late])
  }
  async function stepBy(by: number): Promise<void> {
    const led = leading()
    if (!led) return
    const { side, film } = led
    await standing()
    await learn(film, 1)
    for (let count = 0; count < Math.abs(by); count++) await stepFrame(film, by < 0 ? -1 : 1)
    await show(timeOf(duo).timeFrom(side, film.shown))
  }
  async function settle(): Promise<void> {
    try {
      while (wish) {
        const { to, by = 0 }: Wish = wish
        wish = null
        if (to !== undefined) await show(to)
        if (by !== 0) await stepBy(by)
        changed()
      }
    } finally {
      settling = null
    }
  }
  function ask(next: Wish): void {
    wish = next
    settling ??= settle()
  }
  /** Shows an instant in both. The last one that was asked for wins. */
  const goTo = (to: number) => ask({ to })

  async function playFrom(to: number | null): Promise<void> {
    if (!leading()) return
    round += 1
    const mine = round
    run.stop()
    playing = true
    if (to !== null) goTo(to)
    changed()
    while (settling) await settling
    if (mine === round) run.begin()
  }
  function pause(): void {
    round += 1
    if (!playing) return
    playing = false
    run.stop()
    changed()
    const led = leading()
    const time = timeOf(duo)
    goTo(led && time.shown(led.side, duo.time) ? time.timeFrom(led.side, led.film.shown) : duo.time)
  }
  /** Both at an instant again, as they were: playing or not. */
  const again = (to: number) => (playing ? void playFrom(to) : goTo(to))

  return {
    /** A film can be played; `frame` is how long its frames are shown, where that is known. */
    attach: (side: Side, video: HTMLVideoElement, frame: number | null) => {
      films[side]?.stop()
      films[side] = followFilm(video, frame, () => {
        if (!playing) changed()
      })
      again(duo.time)
    },
    detach: (side: Side) => {
      films[side]?.stop()
      films[side] = null
      if (leading()) changed()
      else pause()
    },
    retime: (to: Timing, instant: number | null) => {
      duo.timing = to
      if (instant !== null || !playing) again(instant ?? duo.time)
    },
    setSpeed: (to: number) => {
      duo.speed = to
    },
    toggle: () => (playing ? pause() : void playFrom(null)),
    /** Steps by a frame; `held`: by a key that is held down, which is passed over while both are on their way. */
    step: (by: 1 | -1, held: boolean) => {
      pause()
      if (held && settling) return
      const steps = Math.min(mostSteps, Math.max(-mostSteps, (wish?.by ?? 0) + by))
      ask({ ...wish, by: steps })
    },
    goTo: (to: number) => {
      pause()
      goTo(to)
    },
    stop: () => {
      round += 1
      run.stop()
      for (const side of sides) films[side]?.stop()
    },
  }
}
