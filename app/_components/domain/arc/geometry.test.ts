import { describe, expect, it } from 'vitest'
import type { ArcSubject, PhaseView } from '@/lib/assessment/arc-subject'
import { type PhaseSet, phaseSets } from '@/lib/curriculum/model'
import { arcSizes, drawArc } from './geometry'

const subject = (
  variant: PhaseSet,
  height: string,
  facing: 'out' | 'in' = 'out',
  turning: ArcSubject['turning'] = 'forwards',
): ArcSubject => ({
  variant,
  height,
  facing,
  turning,
  enters: variant.endsWith('feet-first') ? 'feet-first' : 'head-first',
  phases: phaseSets[variant].map(
    (phase): PhaseView => ({
      phase,
      label: phase,
      criterion: null,
      rating: 3,
      expected: 3,
      how: 'seen',
      critical: false,
      showsCritical: false,
    }),
  ),
})
const variants = Object.keys(phaseSets) as PhaseSet[]

describe.each(Object.entries(arcSizes))('an arc at the size %s', (_, size) => {
  it.each(variants)('has equal columns for %s, one a phase, over the whole width', (variant) => {
    const drawing = drawArc(subject(variant, '3m'), size)
    const count = phaseSets[variant].length
    expect(drawing.columns).toHaveLength(count)
    drawing.columns.forEach((x, index) => {
      expect(x).toBeCloseTo(((index + 0.5) * size.width) / count, 0)
    })
  })

  it.each(variants)('hangs every station of %s straight over its column', (variant) => {
    const { scene, columns } = drawArc(subject(variant, '1m'), size)
    if (variant === 'drill') expect(scene).toBeNull()
    else expect(scene?.stations.map(({ x }) => x)).toEqual(columns)
  })

  it.each(['poolside', '1m', '3m', '5m', '7.5m', '10m'])('stays inside its frame at %s', (height) => {
    const { scene, levels, height: frame } = drawArc(subject('running', height), size)
    for (const { y } of scene?.stations ?? []) {
      expect(y).toBeGreaterThanOrEqual(0)
      expect(y).toBeLessThanOrEqual(scene?.water.bottom ?? 0)
    }
    expect(levels[4]).toBeGreaterThan(scene?.water.bottom ?? 0)
    expect(frame).toBeGreaterThan(levels[0])
  })

  it('steps evenly from rating to rating, 4 highest', () => {
    const { levels } = drawArc(subject('running', '1m'), size)
    for (const rating of [1, 2, 3, 4] as const) {
      expect((levels[rating - 1] ?? 0) - levels[rating]).toBeCloseTo(size.step, 1)
    }
  })
})

describe('what tells dives apart', () => {
  it('small drawings keep water and rule level whatever the board, and without one', () => {
    const frames = ['1m', '3m', 'poolside', 'floor'].map((height) => {
      const { scene, levels, height: frame } = drawArc(subject('running', height), arcSizes.line)
      return { levels, frame, water: scene?.water.top ?? null }
    })
    for (const { levels, frame, water } of frames) {
      expect({ levels, frame }).toEqual({ levels: frames[0]?.levels, frame: frames[0]?.frame })
      if (water !== null) expect(water).toBe(frames[0]?.water)
    }
  })

  it('the toes point out over the water, or in towards the board', () => {
    expect(drawArc(subject('standing', '1m', 'out'), arcSizes.wide).scene?.stack.toes).toBe(1)
    expect(drawArc(subject('standing', '1m', 'in'), arcSizes.wide).scene?.stack.toes).toBe(-1)
  })

  it('the head comes first into the water, or last', () => {
    const headOver = (variant: PhaseSet) => {
      const line = drawArc(subject(variant, '1m'), arcSizes.wide).scene?.line
      return line ? line.bottom - line.head : Number.NaN
    }
    expect(headOver('running')).toBeLessThan(headOver('running feet-first'))
  })

  it('the turn goes away from the board in forward and back dives, towards it in reverse and inward ones', () => {
    // The sweep flag of an SVG arc: 1 is with the clock, and the water lies to the right.
    const sweep = (facing: 'out' | 'in', turning: 'forwards' | 'backwards') =>
      /A9 9 0 1 ([01])/.exec(drawArc(subject('standing', '1m', facing, turning), arcSizes.wide).scene?.turn ?? '')?.[1]
    expect(sweep('out', 'forwards')).toBe('1')
    expect(sweep('in', 'backwards')).toBe('1')
    expect(sweep('out', 'backwards')).toBe('0')
    expect(sweep('in', 'forwards')).toBe('0')
  })

  it('what does not turn over has no sign of a turn', () => {
    expect(drawArc(subject('running feet-first', '1m', 'out', null), arcSizes.wide).scene?.turn).toBeNull()
  })

  it('a twister that ends feet first enters feet first', () => {
    const dive = subject('twister', '1m')
    const line = (enters: ArcSubject['enters']) => drawArc({ ...dive, enters }, arcSizes.wide).scene?.line
    expect(line('feet-first')?.head).toBeLessThan(line('head-first')?.head ?? 0)
  })

  it('a higher board is drawn higher at the same scale', () => {
    const fall = (height: string) => {
      const scene = drawArc(subject('running', height), arcSizes.wide).scene
      return (scene?.water.top ?? 0) - (scene?.board.tip.y ?? 0)
    }
    expect(fall('3m')).toBeCloseTo(3 * fall('1m'), 0)
  })

  it('only a twister carries the two strands of its twist', () => {
    expect(drawArc(subject('twister', '3m'), arcSizes.wide).scene?.twist).toHaveLength(2)
    expect(drawArc(subject('running', '3m'), arcSizes.wide).scene?.twist).toHaveLength(0)
  })

  it('a dry place has the rule alone', () => {
    expect(drawArc(subject('running', 'dry-board'), arcSizes.wide).scene).toBeNull()
  })
})
