import { describe, expect, it } from 'vitest'
import { heightAt, heightOver, plotCourse } from './course'

const running = ['approach', 'hurdle', 'press', 'take-off', 'flight', 'come-out', 'entry', 'under water']
const standing = ['stance', 'press', 'take-off', 'flight', 'come-out', 'entry', 'under water']

function plot(place: string, phases = running, variant: Parameters<typeof plotCourse>[0] = 'running') {
  const course = plotCourse(variant, place, phases)
  if (!course) throw new Error('a dive is drawn here')
  return course
}

describe('the course of a dive', () => {
  it('leaves from the board and meets the water over its columns', () => {
    const course = plot('3m')
    expect(heightAt(course, 3)).toBeCloseTo(3, 6)
    expect(heightAt(course, 6)).toBeCloseTo(0, 6)
  })

  it('flies a parabola: second differences of the height are one negative constant', () => {
    const course = plot('1m')
    const z = [3, 3.5, 4, 4.5, 5, 5.5, 6].map((c) => heightAt(course, c))
    const second = z.slice(2).map((height, index) => height - 2 * (z[index + 1] ?? 0) + (z[index] ?? 0))
    for (const difference of second) expect(difference).toBeCloseTo(second[0] ?? 0, 6)
    expect(second[0]).toBeLessThan(0)
  })

  it('falls as gravity has it: the times up and down are as the roots of the heights', () => {
    // z = g t² / 2 (any text on projectile motion): t_down / t_up = √(fall / rise).
    const course = plot('3m')
    const heights = Array.from({ length: 3001 }, (_, index) => heightAt(course, 3 + index / 1000))
    const top = Math.max(...heights)
    const apex = heights.indexOf(top) / 1000
    expect((3 - apex) / apex).toBeCloseTo(Math.sqrt(top / (top - 3)), 2)
  })

  it('rises as far over every springboard', () => {
    const rise = (place: string) => plot(place).top - plot(place).over
    expect(rise('1m')).toBe(rise('3m'))
  })

  it.each([
    ['1m', running, 'running'],
    ['3m', running, 'running'],
    ['1m', standing, 'standing'],
    ['3m', standing, 'standing'],
  ] as const)('is smooth where the board at %s lets go', (place, phases, variant) => {
    const course = plot(place, [...phases], variant)
    const at = course.leave
    const before = (heightAt(course, at) - heightAt(course, at - 1e-4)) / 1e-4
    const after = (heightAt(course, at + 1e-4) - heightAt(course, at)) / 1e-4
    expect(before).toBeCloseTo(after, 1)
  })

  it('tips over in a fall, without a jump', () => {
    const fall = plot('1m', ['stance', 'flight', 'entry', 'under water'], 'fall-in')
    expect(fall.top - fall.over).toBeLessThan(0.1)
    expect(heightAt(fall, 1)).toBeLessThan(fall.over)
  })

  it('presses a springboard down and hops the hurdle, and does neither from the poolside', () => {
    expect(heightAt(plot('1m'), 2)).toBeLessThan(1)
    expect(heightAt(plot('1m'), 1)).toBeGreaterThan(1)
    const edge = plot('poolside', standing, 'standing')
    expect(heightAt(edge, 1)).toBeCloseTo(edge.over, 6)
  })

  it('never presses a board into the water', () => {
    const jump = ['approach', 'hurdle', 'press', 'take-off', 'flight', 'entry']
    const course = plot('1m', jump, 'running feet-first')
    for (let c = 0; c <= 3; c += 0.05) expect(heightAt(course, c)).toBeGreaterThan(0.4)
  })

  it('goes on under water only where that is a phase', () => {
    expect(heightAt(plot('1m'), 7)).toBeLessThan(-1)
    expect(heightAt(plot('1m', running.slice(0, 7)), 7)).toBeNaN()
  })

  it('draws nothing for drills and dry places', () => {
    expect(plotCourse('drill', '1m', ['set-up', 'movement', 'finish'])).toBeNull()
    expect(plotCourse('running', 'dry-board', running)).toBeNull()
    expect(plotCourse('running', 'trampoline-belt', running)).toBeNull()
  })
})

describe('the height of a place', () => {
  it.each([
    ['1m', 1],
    ['7.5m', 7.5],
    ['10m', 10],
    ['floor', null],
    ['dry-board', null],
  ])('%s is %s', (place, metres) => expect(heightOver(place)).toBe(metres))
  it('of the poolside is its edge over the water', () => expect(heightOver('poolside')).toBeGreaterThan(0))
})
