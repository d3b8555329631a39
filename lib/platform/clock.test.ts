import { expect, it } from 'vitest'
import { clockFrom } from './clock'

it('is the machine’s clock unless it is told another start', () => {
  expect(clockFrom(null, 0, () => 1_000)()).toBe(1_000)
})

it('goes on from its start at the machine’s speed', () => {
  let machine = 50_000
  const clock = clockFrom(7_000, 50_000, () => machine)
  expect(clock()).toBe(7_000)
  machine += 1_234
  expect(clock()).toBe(8_234)
})
