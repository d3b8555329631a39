import { vi } from 'vitest'

const paint = 16

/**
 * A video element as far as the players know one, on vitest's own clock: 60 frames a second, seeks that last as long as
 * `seeks` says, and pictures that are told of at the next paint.
 */
export class PretendFilm extends EventTarget {
  readonly HAVE_CURRENT_DATA = 2
  readonly HAVE_FUTURE_DATA = 3
  readonly error = null
  /** What the browser has of it. */
  readyState = 4
  playbackRate = 1
  paused = true
  seeking = false
  /** Milliseconds that a seek lasts. */
  seeks = 20
  /** How often it was told to play. */
  played = 0
  readonly duration: number
  readonly #wait = new Map<number, VideoFrameRequestCallback>()
  #at = 0
  #calls = 0
  #painted = -1
  #seek: ReturnType<typeof setTimeout> | undefined

  constructor(duration: number) {
    super()
    this.duration = duration
    const tick = () => {
      if (!this.paused && !this.seeking && this.readyState > 2)
        this.#at = Math.min(duration, this.#at + (paint / 1000) * this.playbackRate)
      if (this.ended) this.paused = true
      if (!this.seeking) this.#show()
      setTimeout(tick, paint)
    }
    tick()
  }
  /** Its host has nothing more to give for now. */
  set stalls(now: boolean) {
    this.readyState = now ? 2 : 4
  }
  get ended(): boolean {
    return this.#at >= this.duration
  }
  get currentTime(): number {
    return this.#at
  }
  set currentTime(to: number) {
    clearTimeout(this.#seek)
    this.#at = Math.min(this.duration, Math.max(0, to))
    this.seeking = true
    this.#seek = setTimeout(() => {
      this.seeking = false
      this.dispatchEvent(new Event('seeked'))
    }, this.seeks)
  }
  /** The number of the frame at the current time. */
  get frame(): number {
    return Math.floor(this.#at * 60 + 1e-6)
  }
  #show(): void {
    if (this.frame === this.#painted) return
    this.#painted = this.frame
    const called = [...this.#wait.values()]
    this.#wait.clear()
    for (const call of called) call(performance.now(), { mediaTime: this.frame / 60 } as VideoFrameCallbackMetadata)
  }
  requestVideoFrameCallback(call: VideoFrameRequestCallback): number {
    this.#calls += 1
    this.#wait.set(this.#calls, call)
    return this.#calls
  }
  cancelVideoFrameCallback(call: number): void {
    this.#wait.delete(call)
  }
  async play(): Promise<void> {
    this.played += 1
    this.paused = false
  }
  pause(): void {
    this.paused = true
  }
  /** Itself, to whoever asks for a video element. */
  get element(): HTMLVideoElement {
    return this as unknown as HTMLVideoElement
  }
}

/** Puts the clock and the paints into a test's hands. */
export function holdClock(): void {
  vi.useFakeTimers()
  const paints = (call: FrameRequestCallback) => setTimeout(() => call(performance.now()), paint)
  vi.stubGlobal('requestAnimationFrame', paints)
  vi.stubGlobal('cancelAnimationFrame', clearTimeout)
}

/** Lets go of the clock again. */
export function leaveClock(): void {
  vi.useRealTimers()
  vi.unstubAllGlobals()
}

/** Lets so many milliseconds pass. */
export const pass = (ms: number): Promise<unknown> => vi.advanceTimersByTimeAsync(ms)
