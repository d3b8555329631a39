import { seekFor } from './frames'
import { guessed, learnFrame } from './learn-frame'

/** A film while it can be played. */
export interface Film {
  readonly video: HTMLVideoElement
  /** The time of the frame that is shown, in seconds of the film. */
  shown: number
  /** How long a frame is shown, in seconds; null until it was learned. */
  frame: number | null
  /** It is jumping to another place, and shows nothing new until it is there. */
  jumping: boolean
  /** How long a jump lasted of late, in seconds. */
  jump: number
  /** How many frames the browser has told of. */
  told: number
  readonly stop: () => void
}

/** The time of a film's frame, as far as it is known. */
export const frameOf = ({ frame }: Film): number => frame ?? guessed

/** Follows what a film shows, whether it plays or stands; `changed` is told of each new frame. */
export function followFilm(video: HTMLVideoElement, frame: number | null, changed: () => void): Film {
  let call = 0
  const film: Film = {
    video,
    shown: video.currentTime,
    frame,
    jumping: false,
    jump: 0.05,
    told: 0,
    stop: () => video.cancelVideoFrameCallback(call),
  }
  const watch = (_: number, { mediaTime }: { mediaTime: number }) => {
    film.shown = mediaTime
    film.told += 1
    call = video.requestVideoFrameCallback(watch)
    changed()
  }
  call = video.requestVideoFrameCallback(watch)
  return film
}

const nextPaint = (): Promise<number> => new Promise(requestAnimationFrame)

/** Waits until the browser has told of the picture that a film stopped at: it does when it paints it. */
export async function standing(): Promise<void> {
  await nextPaint()
  await nextPaint()
}

/** Seeks, and waits until the film is there, however long its host takes; a film that breaks off meanwhile says so itself. */
async function arrive(video: HTMLVideoElement, to: number): Promise<void> {
  const over = new AbortController()
  await new Promise<void>((resolve) => {
    for (const name of ['seeked', 'error', 'emptied'])
      video.addEventListener(name, () => resolve(), { signal: over.signal })
    video.currentTime = to
  })
  over.abort()
}

// Of a film that is there the browser tells within a few paints, on a busy machine a few more; it may not tell at all of the
// picture that was shown already.
const grace = 250

/** Jumps, and waits until the frame there is shown. */
export async function jumpTo(film: Film, to: number): Promise<void> {
  const { video } = film
  if (video.error || video.readyState === 0) return
  const [began, told, moves] = [performance.now(), film.told, video.currentTime !== to]
  film.jumping = true
  await arrive(video, to)
  film.jump = (film.jump + (performance.now() - began) / 1000) / 2
  film.jumping = false
  await standing()
  const arrived = performance.now()
  while (moves && film.told === told && performance.now() - arrived < grace) await nextPaint()
}

/**
 * Learns how long a frame of a film is shown, the first time, by playing a few at `speed` afterwards, and comes back to the
 * frame that was shown. Null where it cannot be learned.
 */
export async function learn(film: Film, speed: number): Promise<number | null> {
  if (film.frame !== null) return film.frame
  const at = film.shown
  film.frame = await learnFrame(film.video).catch(() => null)
  film.video.playbackRate = speed
  await jumpTo(film, intoFrame(at, film.frame))
  return film.frame
}

/** Where to seek for the frame that begins at a time: into its middle; where its length is not known, past what rounding to a millisecond can lose. */
export const intoFrame = (at: number, frame: number | null): number => at + (frame ?? 0.004) / 2

/** Steps to the frame after or before the one that is shown: further where frames are longer than thought. */
export async function stepFrame(film: Film, by: 1 | -1): Promise<void> {
  const from = film.shown
  for (let tries = 0; tries < 4 && film.shown === from; tries++)
    await jumpTo(film, seekFor(from, by, frameOf(film), tries))
}
