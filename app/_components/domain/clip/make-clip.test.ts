import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { holdClock, leaveClock, PretendFilm, pass } from '@/tests/support/pretend-film'
import { type ClipShown, makeClip } from './make-clip'

beforeEach(holdClock)
afterEach(leaveClock)

/** A clip at half a second of a film, with what it said last. */
async function clipAt(seeks: number) {
  const film = new PretendFilm(3)
  const said: ClipShown[] = []
  const clip = makeClip(film.element, { start: 0.5, end: 1.5 }, (shown) => void said.push(shown))
  clip.toStart()
  await pass(200)
  film.seeks = seeks
  const frame = () => Math.round((said.at(-1)?.shown ?? Number.NaN) * 60)
  return { film, clip, frame, last: () => said.at(-1) }
}

describe('a film whose seeks are slow', () => {
  it('lands each step on the next frame, and says the time of the picture', async () => {
    const { film, clip, frame } = await clipAt(700)
    for (const [by, expected] of [
      [1, 31],
      [1, 32],
      [-1, 31],
    ] as const) {
      clip.step(by, false)
      await pass(5000)
      expect([frame(), film.frame]).toEqual([expected, expected])
    }
  })

  it('does what is asked meanwhile in turn: a mark, a step, and a mark are of two frames', async () => {
    const { clip, frame } = await clipAt(700)
    const first = clip.hold()
    clip.step(1, false)
    const second = clip.hold()
    await pass(9000)
    expect((await first)?.at).toBeCloseTo(30 / 60, 6)
    expect((await second)?.at).toBeCloseTo(31 / 60, 6)
    expect((await second)?.frame).toBeCloseTo(1 / 60, 6)
    expect(frame()).toBe(31)
  })

  it('passes over the steps of a key held down that come while one is under way', async () => {
    const { clip, frame } = await clipAt(700)
    clip.step(1, false)
    for (let count = 0; count < 20; count++) clip.step(1, true)
    await pass(9000)
    expect(frame()).toBe(31)
  })
})

describe('a film that plays', () => {
  it('is held at the picture that it stopped at, not at the one told of before', async () => {
    const { film, clip, frame } = await clipAt(20)
    clip.setSpeed(1 / 4)
    clip.toggle()
    await pass(310)
    const held = clip.hold()
    await pass(2000)
    expect(Math.round(((await held)?.at ?? 0) * 60)).toBe(film.frame)
    expect(frame()).toBe(film.frame)
    expect(film.playbackRate).toBe(1 / 4)
  })

  it('plays once what was played, paused and played again while it was being fetched, and loops at its end', async () => {
    const { film, clip, last } = await clipAt(20)
    clip.step(1, false)
    for (let count = 0; count < 3; count++) clip.toggle()
    await pass(2500)
    expect([last()?.playing, film.paused]).toEqual([true, false])
    expect(film.currentTime).toBeLessThan(1.52)
    clip.toggle()
    await pass(100)
    expect([last()?.playing, film.paused]).toEqual([false, true])
    expect(clip.stands()).toBe(true)
  })

  it('says so while its picture is about to change', async () => {
    const { clip } = await clipAt(700)
    expect(clip.stands()).toBe(true)
    clip.step(1, false)
    await pass(300)
    expect(clip.stands()).toBe(false)
  })
})

it('gives no frame of a film that has none to show', async () => {
  const { film, clip } = await clipAt(20)
  film.readyState = 0
  const held = clip.hold()
  await pass(100)
  expect(await held).toBeNull()
})
