import { guessed } from '../clip/seek'

/** One of the two films while it can be played. */
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
  readonly stop: () => void
}

/** The time of a film's frame, as far as it is known. */
export const frameOf = ({ frame }: Film): number => frame ?? guessed

/** Follows what a film shows; `changed` is told of each new frame. */
export function followFilm(video: HTMLVideoElement, frame: number | null, changed: () => void): Film {
  let call = 0
  const film: Film = {
    video,
    shown: video.currentTime,
    frame,
    jumping: false,
    jump: 0.05,
    stop: () => video.cancelVideoFrameCallback(call),
  }
  const watch = (_: number, { mediaTime }: { mediaTime: number }) => {
    film.shown = mediaTime
    call = video.requestVideoFrameCallback(watch)
    changed()
  }
  call = video.requestVideoFrameCallback(watch)
  return film
}

const nextPaint = (): Promise<number> => new Promise(requestAnimationFrame)

/** Jumps, and waits until the frame there is shown. A film that is jumping already is waited for. */
export async function jumpTo(film: Film, to: number): Promise<void> {
  const { video } = film
  film.jumping = true
  const began = performance.now()
  await new Promise<void>((resolve) => {
    video.addEventListener('seeked', () => resolve(), { once: true })
    video.addEventListener('error', () => resolve(), { once: true })
    video.currentTime = to
  })
  film.jump = (film.jump + (performance.now() - began) / 1000) / 2
  film.jumping = false
  // The browser tells of the new frame when it paints it.
  await nextPaint()
  await nextPaint()
}
