import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { holdClock, leaveClock, PretendFilm, pass } from '@/tests/support/pretend-film'
import { type DuoShown, makeDuo } from './duo'
import type { Timing } from './duo-time'
import { timeMap } from './time-map'

beforeEach(holdClock)
afterEach(leaveClock)

const timing: Timing = {
  map: timeMap([{ first: 1, second: 1.5 }]),
  spans: { first: { start: 0.5, end: 2.5 }, second: { start: 1, end: 3 } },
}

/** Two films that stand at their mark, with what they said last. */
async function duoAt(at = 1, spans = timing.spans) {
  const [first, second] = [new PretendFilm(4), new PretendFilm(4)]
  const said: DuoShown[] = []
  const duo = makeDuo({ ...timing, spans }, at, (shown) => void said.push(shown))
  duo.attach('first', first.element, 1 / 60)
  duo.attach('second', second.element, 1 / 60)
  await pass(300)
  const last = () => said.at(-1)
  /** Whether neither moves any more. */
  const stands = async () => {
    const before = [first.currentTime, second.currentTime]
    await pass(500)
    return first.paused && second.paused && before[0] === first.currentTime && before[1] === second.currentTime
  }
  return { first, second, duo, last, stands }
}

describe('playing two films', () => {
  it('shows both at their mark, runs both, and stops both', async () => {
    const { first, second, duo, last, stands } = await duoAt()
    expect([first.frame, second.frame]).toEqual([60, 90])
    duo.toggle()
    await pass(500)
    expect(first.currentTime).toBeGreaterThan(1.3)
    expect(second.currentTime - first.currentTime).toBeCloseTo(0.5, 1)
    duo.toggle()
    await pass(300)
    expect(last()?.playing).toBe(false)
    expect(await stands()).toBe(true)
    expect(second.frame - first.frame).toBe(30)
  })

  it('pauses for good after play, pause and play while both were still on their way', async () => {
    const { first, second, duo, last, stands } = await duoAt()
    for (const film of [first, second]) film.seeks = 400
    duo.goTo(1.2)
    duo.toggle()
    duo.toggle()
    duo.toggle()
    await pass(1500)
    expect(last()?.playing).toBe(true)
    expect(first.paused).toBe(false)
    duo.toggle()
    await pass(1500)
    expect(last()?.playing).toBe(false)
    expect(await stands()).toBe(true)
  })

  it('pauses for good after pause and play while both went back to the start', async () => {
    const { first, second, duo, last, stands } = await duoAt(2.4)
    for (const film of [first, second]) film.seeks = 400
    duo.toggle()
    // The end is there after a tenth of a second: both are on their way back.
    await pass(250)
    expect(first.seeking).toBe(true)
    duo.toggle()
    duo.toggle()
    await pass(2000)
    expect([last()?.playing, first.paused]).toEqual([true, false])
    duo.toggle()
    await pass(1500)
    expect(await stands()).toBe(true)
  })

  it('does not begin once it was stopped', async () => {
    const { duo, stands } = await duoAt()
    duo.goTo(1.3)
    duo.toggle()
    duo.stop()
    await pass(500)
    expect(await stands()).toBe(true)
  })

  it('goes on with the second where the first has ended and the two do not meet', async () => {
    const spans = { first: { start: 0.5, end: 1.2 }, second: { start: 3, end: 3.5 } }
    const { second, duo } = await duoAt(1, spans)
    duo.toggle()
    await pass(600)
    expect(second.paused).toBe(false)
    expect(second.currentTime).toBeGreaterThan(3)
  })

  it('holds the second while the first waits for its host', async () => {
    const { first, second, duo } = await duoAt()
    duo.toggle()
    await pass(200)
    first.stalls = true
    await pass(100)
    const at = second.currentTime
    await pass(400)
    expect(second.currentTime).toBe(at)
    first.stalls = false
    await pass(300)
    expect(second.currentTime - first.currentTime).toBeCloseTo(0.5, 1)
    expect(second.currentTime).toBeGreaterThan(at)
  })
})

describe('stepping two films', () => {
  it('steps both, however slow they are, and does every press', async () => {
    const { first, second, duo } = await duoAt()
    for (const film of [first, second]) film.seeks = 400
    duo.step(1, false)
    duo.step(1, false)
    await pass(6000)
    expect([first.frame, second.frame]).toEqual([62, 92])
    duo.step(-1, false)
    for (let count = 0; count < 20; count++) duo.step(-1, true)
    await pass(6000)
    expect([first.frame, second.frame]).toEqual([61, 91])
  })

  it('steps from where both were paused, and does not play on', async () => {
    const { first, duo, last, stands } = await duoAt()
    duo.toggle()
    await pass(300)
    duo.step(1, false)
    duo.toggle()
    duo.step(1, false)
    await pass(2000)
    expect(last()?.playing).toBe(false)
    expect(await stands()).toBe(true)
    expect(Math.round((last()?.shown.first ?? 0) * 60)).toBe(first.frame)
  })

  it('goes where it was asked to while a step is under way', async () => {
    const { first, second, duo } = await duoAt()
    for (const film of [first, second]) film.seeks = 200
    duo.step(1, false)
    await pass(100)
    duo.goTo(2)
    await pass(3000)
    expect([first.frame, second.frame]).toEqual([120, 150])
  })
})

it('moves one film on while the other hangs', async () => {
  const { first, second, duo, last } = await duoAt()
  second.seeks = 1e9
  duo.goTo(1.5)
  await pass(2500)
  duo.goTo(2)
  await pass(2500)
  expect(first.frame).toBe(120)
  expect(last()?.time).toBe(2)
})
