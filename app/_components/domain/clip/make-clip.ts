import { type Film, followFilm, intoFrame, jumpTo, learn, standing, stepFrame } from './film'
import { isPast } from './frames'

interface Range {
  readonly start: number
  readonly end: number | null
}

/** What a clip shows. */
export interface ClipShown {
  readonly playing: boolean
  /** The time of the frame that is shown, in seconds of the film. */
  readonly shown: number
  /** How long one frame is shown, in seconds; null until it was learned, and where it cannot be. */
  readonly frame: number | null
}

/** A frame to keep something of: its time and how long it is shown, in seconds; null where that cannot be learned. */
export interface StillFrame {
  readonly at: number
  readonly frame: number | null
}

// Steps that wait for what is under way: those of a key held down come too fast to wait.
const mostWaiting = 3

/** One film at one range: it loops, slows down, and steps from frame to frame. What is asked of it is done in turn. */
export function makeClip(video: HTMLVideoElement, { start, end }: Range, tell: (shown: ClipShown) => void) {
  let [playing, speed, under, quiet] = [false, 1, 0, false]
  let last: Promise<unknown> = Promise.resolve()

  const film: Film = followFilm(video, null, () => {
    if (playing && !video.seeking && isPast(film.shown, end)) video.currentTime = start
    changed()
  })
  function changed(): void {
    if (!quiet) tell({ playing, shown: film.shown, frame: film.frame })
  }

  /** One thing after the other: a seek begun before the last one has shown its frame would show neither. */
  function inTurn<Result>(work: () => Promise<Result>): Promise<Result> {
    under += 1
    const done = last.then(work).finally(() => {
      under -= 1
      changed()
    })
    last = done.catch(() => {})
    return done
  }

  function pause(): void {
    // What is played to learn from stops by itself.
    if (playing && !quiet) video.pause()
    playing = false
    changed()
  }
  function play(from: number | null): void {
    playing = true
    changed()
    void inTurn(async () => {
      if (!playing) return
      if (from !== null) video.currentTime = from
      // It is not waited for: a film that cannot be played says so itself, by its error.
      video.play().catch(() => {
        if (video.paused) pause()
      })
    })
  }
  /** The frames that are played to learn from are no news: the film comes back to the one it stood at. */
  async function learnInTurn(): Promise<number | null> {
    quiet = true
    try {
      return await learn(film, speed)
    } finally {
      quiet = false
    }
  }
  const replay = () => play(start)

  return {
    toggle: () => (playing ? pause() : play(null)),
    pause,
    replay,
    /** Plays on from the start of the range where the film itself ended. */
    again: () => {
      if (playing) replay()
    },
    setSpeed: (to: number) => {
      speed = to
      video.playbackRate = to
    },
    /** Steps by a frame; `held`: by a key that is held down, which is passed over while another step is under way. */
    step: (by: 1 | -1, held: boolean) => {
      if (under > (held ? 0 : mostWaiting)) return
      pause()
      void inTurn(async () => {
        await standing()
        await learnInTurn()
        await stepFrame(film, by)
      })
    },
    /** Shows the frame that begins at a time; `lasts` is how long it is shown, where that is known. */
    goTo: (seconds: number, lasts: number | null) => {
      pause()
      void inTurn(() => jumpTo(film, intoFrame(seconds, lasts ?? film.frame)))
    },
    /** Shows the start of the range, playing or not. */
    toStart: () => void inTurn(() => jumpTo(film, start)),
    /** Stops after all that was asked before, and gives the frame that then stands; null when none is there yet. */
    hold: (): Promise<StillFrame | null> => {
      pause()
      return inTurn(async () => {
        await standing()
        if (video.readyState < video.HAVE_CURRENT_DATA) return null
        const at = film.shown
        return { at, frame: await learnInTurn() }
      })
    },
    /** Whether a picture stands there that nothing is about to change. */
    stands: (): boolean => !playing && under === 0 && !video.seeking,
    stop: () => film.stop(),
  }
}

export type Clip = ReturnType<typeof makeClip>
