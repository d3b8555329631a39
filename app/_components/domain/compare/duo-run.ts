import { type Film, frameOf, jumpTo } from '../clip/film'
import { type DuoState, inside, place, timeOf } from './duo-state'
import { type Side, sides } from './duo-time'
import { correct } from './pace'
import { within } from './time-map'

// Chromium plays no slower than this.
const slowest = 1 / 16

/**
 * Runs both films from paint to paint: the leader gives the time, the other keeps beside it. `changed` is told at each paint,
 * `over` when nothing shows any more, with the instant to go on from. There is never more than one such run.
 */
export function makeRun(duo: DuoState, changed: () => void, over: (onwards: number) => void) {
  let [tick, running] = [0, false]
  // When the films were last looked at, and how long it was at most between two looks of late, in seconds.
  let [looked, turn] = [0, 0]
  const paceOf = (side: Side) => duo.speed * timeOf(duo).slope(side, duo.time)

  // Whatever keeps a film from playing, it says so by its own error.
  function start(side: Side, { video }: Film): void {
    video.playbackRate = Math.max(slowest, paceOf(side))
    video.play().catch(() => {})
  }
  function pace({ video }: Film, to: number): void {
    if (Math.abs(video.playbackRate - to) > to / 100) video.playbackRate = to
  }

  function keepBeside(side: Side, film: Film): void {
    if (film.jumping) return
    const { video } = film
    const time = timeOf(duo)
    if (!time.shown(side, duo.time)) {
      video.pause()
      if (Math.abs(film.shown - time.place(side, duo.time)) > 2 * frameOf(film)) void place(duo, side)
    } else if (video.paused) {
      // One that has ended would begin again.
      if (!video.ended) start(side, film)
    } else {
      const target = time.timeIn(side, duo.time)
      const beside = { at: video.currentTime, target, pace: paceOf(side) }
      const act = correct(beside, { frame: frameOf(film), jump: film.jump, turn })
      if (act.kind === 'seek') void jumpTo(film, within(time.span[side], act.to))
      else pace(film, act.pace)
    }
  }

  function lead(side: Side, film: Film): void {
    if (film.video.ended) return
    if (film.video.paused && !film.jumping) start(side, film)
    else pace(film, Math.max(slowest, paceOf(side)))
  }

  function run(now: number): void {
    turn = Math.max((now - looked) / 1000, turn * 0.95)
    looked = now
    const time = timeOf(duo)
    const side = time.leader(duo.time)
    const film = side && duo.films[side]
    if (!side || !film) return
    const { video, jumping } = film
    if (video.ended) duo.time = time.timeFrom(side, time.span[side].end)
    else if (!jumping && !video.paused) duo.time = time.timeFrom(side, video.currentTime)
    if (duo.time >= time.whole.end - 2 * inside || !sides.some((one) => time.shown(one, duo.time))) {
      over(time.onwards(duo.time))
      return
    }
    const waits = !video.ended && (jumping || video.readyState < video.HAVE_FUTURE_DATA)
    for (const one of sides) {
      const other = duo.films[one]
      if (other && one === side) lead(one, other)
      // While the leader waits for its host the other would run ahead and be called back, again and again.
      else if (waits) other?.video.pause()
      else if (other) keepBeside(one, other)
    }
    changed()
    tick = requestAnimationFrame(run)
  }

  function stop(): void {
    if (!running) return
    running = false
    cancelAnimationFrame(tick)
    for (const side of sides) duo.films[side]?.video.pause()
  }
  return {
    begin: () => {
      stop()
      running = true
      ;[looked, turn] = [performance.now(), 0]
      for (const side of sides) {
        const film = duo.films[side]
        if (film && timeOf(duo).shown(side, duo.time)) start(side, film)
      }
      tick = requestAnimationFrame(run)
    },
    stop,
  }
}
