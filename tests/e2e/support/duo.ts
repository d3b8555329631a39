import type { Page } from '@playwright/test'
import pg from 'pg'
import { v7 as uuidv7 } from 'uuid'
import type { Demo } from './demo'

/** Marks of a moment by their keys, in seconds of the film, as a coach kept them. */
export async function mark(demo: Demo, moment: string, coach: string, marks: Readonly<Record<string, number>>) {
  const client = new pg.Client({ connectionString: demo.database.owner })
  await client.connect()
  try {
    for (const [key, seconds] of Object.entries(marks))
      await client.query(
        `INSERT INTO "MomentMark" ("id", "momentId", "coachId", "phase", "atMs", "frameUs", "markedAt")
         VALUES ($1, $2, $3, $4, $5, 16667, now())`,
        [uuidv7(), moment, coach, key, Math.round(seconds * 1000)],
      )
  } finally {
    await client.end()
  }
}

/** The times of the frames that both films show, in seconds of each. */
export const bothShow = (page: Page): Promise<number[]> =>
  page.locator('.duo output[data-media-time]').evaluateAll((all) => all.map((one) => Number(one.dataset.mediaTime)))

/** A frame that a film showed: when, in seconds of the clock, and its time in the film. */
interface Seen {
  readonly at: number
  readonly media: number
}

interface SeenByBoth {
  readonly films: readonly Seen[][]
  /** When the page got its turn to look at the films, in seconds of the clock. */
  readonly turns: readonly number[]
}

/** Writes down each frame that both films show from now on, and each turn that the page gets. */
export const watchBoth = (page: Page): Promise<void> =>
  page.evaluate(() => {
    const turns: number[] = []
    const turn = () => {
      turns.push(performance.now() / 1000)
      requestAnimationFrame(turn)
    }
    turn()
    const films = [...document.querySelectorAll('video')].map((video) => {
      const frames: Seen[] = []
      const watch = (_: number, { expectedDisplayTime, mediaTime }: VideoFrameCallbackMetadata) => {
        frames.push({ at: expectedDisplayTime / 1000, media: mediaTime })
        video.requestVideoFrameCallback(watch)
      }
      video.requestVideoFrameCallback(watch)
      return frames
    })
    Object.assign(window, { seenByBoth: { films, turns } })
  })

/** What `watchBoth` wrote down. */
export const seenByBoth = (page: Page): Promise<SeenByBoth> =>
  page.evaluate(() => (window as unknown as { seenByBoth: SeenByBoth }).seenByBoth)

/** The frames on both sides of an instant, when none was left out between them. */
function around(frames: readonly Seen[], isAfter: (frame: Seen) => boolean, from: number): [Seen, Seen, number] | null {
  for (let index = Math.max(1, from); index < frames.length; index++) {
    const [before, after] = [frames[index - 1], frames[index]]
    if (before && after && !isAfter(before) && isAfter(after)) return [before, after, index]
  }
  return null
}

// A page that is left waiting for as long as a drift takes to be made up keeps nothing together; then all is made up in as long again.
const [tooLong, madeUp] = [0.2, 1]
const gotItsTurns = (turns: readonly number[], at: number): boolean =>
  turns.every((turn, index) => {
    const before = turns[index - 1] ?? turn
    return turn < at - madeUp || before > at || turn - before < tooLong
  })

/**
 * By how much the second film was off each time that the first came to its mark, in seconds of the second. A passing does not
 * count where the browser left frames out around the mark, since nobody can tell, nor where a busy machine kept the page waiting.
 */
export function offAt({ films, turns }: SeenByBoth, marks: readonly [number, number]): number[] {
  const [first = [], second = []] = films
  const frame = 1 / 60
  const [mark, other] = marks
  const off: number[] = []
  for (let from = 1; from < first.length; ) {
    const passed = around(first, ({ media }) => media >= mark - 0.001, from)
    if (!passed) break
    const [before, after, index] = passed
    from = index + 1
    const dense = after.media - before.media < 1.5 * frame
    const at = before.at + ((after.at - before.at) * (mark - before.media)) / (after.media - before.media)
    const beside = around(second, (one) => one.at >= at, 1)
    if (!beside || !dense || !gotItsTurns(turns, at)) continue
    const [earlier, later] = beside
    const step = later.media - earlier.media
    if (step <= 0 || step > 2.5 * frame) continue
    off.push(earlier.media + (step * (at - earlier.at)) / (later.at - earlier.at) - other)
  }
  return off
}
