import { frameTimeOf } from './frames'

/** Waits for the frame that a seek shows, and gives its time; null when it is the one already shown. */
const nextFrame = (video: HTMLVideoElement): Promise<number | null> =>
  new Promise((resolve) => {
    // The browser calls back only for a picture that is new.
    const timer = setTimeout(() => {
      video.cancelVideoFrameCallback(call)
      resolve(null)
    }, 250)
    const call = video.requestVideoFrameCallback((_, { mediaTime }) => {
      clearTimeout(timer)
      resolve(mediaTime)
    })
  })

/** Seeks, and gives the time of the frame that is shown then; null when it is the one already shown. */
export async function seekAndSee(video: HTMLVideoElement, to: number): Promise<number | null> {
  const frame = nextFrame(video)
  video.currentTime = to
  return frame
}

/** The time of a frame where the film ended before its frames told: stepping then reaches on until the picture changes. */
export const guessed = 1 / 60

/** Learns the time of a frame by playing a few of them slowly: nothing in a film says it, and phones vary it. */
export async function learnFrame(video: HTMLVideoElement): Promise<number | null> {
  const [speed, seen] = [video.playbackRate, [] as number[]]
  video.playbackRate = 0.25
  await video.play()
  for (let count = 0; count < 6; count++) {
    const time = await nextFrame(video)
    if (time !== null) seen.push(time)
  }
  video.pause()
  video.playbackRate = speed
  return frameTimeOf(seen)
}
