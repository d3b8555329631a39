import { frameTimeOf } from './frames'

/** The time of a frame where the film ended before its frames told: stepping then reaches on until the picture changes. */
export const guessed = 1 / 60

/** Waits a quarter of a second for the next frame of a film that plays, and gives its time; null when none came. */
const nextFrame = (video: HTMLVideoElement): Promise<number | null> =>
  new Promise((resolve) => {
    const timer = setTimeout(() => {
      video.cancelVideoFrameCallback(call)
      resolve(null)
    }, 250)
    const call = video.requestVideoFrameCallback((_, { mediaTime }) => {
      clearTimeout(timer)
      resolve(mediaTime)
    })
  })

/**
 * Learns the time of a frame by playing a few of them slowly: nothing in a film says it, and phones vary it. While its host is
 * slow the frames are waited for. Null when it was paused or ended before they told.
 */
export async function learnFrame(video: HTMLVideoElement): Promise<number | null> {
  const seen: number[] = []
  video.playbackRate = 0.25
  await video.play()
  for (let count = 0; count < 6 && !video.paused && !video.ended; ) {
    const time = await nextFrame(video)
    if (time !== null) seen.push(time)
    if (time !== null || video.readyState >= video.HAVE_FUTURE_DATA) count++
  }
  video.pause()
  return frameTimeOf(seen)
}
