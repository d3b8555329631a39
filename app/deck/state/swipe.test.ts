import { describe, expect, it } from 'vitest'
import { swipeStep } from './swipe'

describe('swipeStep', () => {
  it.each([
    ['leftwards leads on', 300, 200, 1],
    ['rightwards leads back', 100, 200, -1],
    ['a short one is a tap', 200, 160, 0],
    ['from the left rim it is the phone’s own way back', 10, 200, 0],
    ['from the right rim as well', 385, 200, 0],
  ])('%s', (_, from, to, step) => {
    expect(swipeStep({ x: from, y: 400 }, { x: to, y: 410 }, 390)).toBe(step)
  })

  it('is none when it goes down as much as across: then the page scrolls', () => {
    expect(swipeStep({ x: 300, y: 300 }, { x: 200, y: 360 }, 390)).toBe(0)
  })
})
