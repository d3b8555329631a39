import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Frame } from '@/lib/assessment/measure/taken'
import {
  chosenFor,
  type Draft,
  droppedIn,
  emptyDraft,
  nextSlot,
  placed,
  readMetres,
  remembered,
  toTaken,
  undone,
  visibleSlots,
} from './draft'
import { filmScale, toFilm } from './film-place'

const frame = (atMs: number, frameUs: number | null = 16_667): Frame => ({ atMs, frameUs, width: 720, height: 540 })
const put = (draft: Draft, slot: Parameters<typeof placed>[1], x: number, y: number, atMs = 1000): Draft => {
  const next = placed(remembered(draft), slot, { x, y }, frame(atMs))
  if ('atMs' in next) throw new Error(next.kind)
  return next
}

describe('a measure while it is placed', () => {
  it('goes from point to point, and serves another measure with the same points', () => {
    const one = put(emptyDraft, 'ankle', 10, 20)
    expect(nextSlot(one, 'ankle')).toBe('hip')
    const two = put(put(one, 'hip', 30, 40), 'shoulder', 50, 60)
    const hip = chosenFor(two, { kind: 'hip' })
    expect(nextSlot(hip)).toBeNull()
    expect(toTaken(hip, null)).toMatchObject({
      kind: 'hip',
      frames: [{ atMs: 1000 }],
      points: { hip: { x: 30, y: 40 } },
    })
    expect(chosenFor(two, { kind: 'arms' }).chosen).toBe('shoulder')
    expect(nextSlot(chosenFor(two, { kind: 'arms' }), 'shoulder')).toBe('hand')
    expect(toTaken(chosenFor(two, { kind: 'flight' }), null)).toBeNull()
  })

  it('keeps the points of the body on one frame, and lets what stands still be placed on any', () => {
    const draft = chosenFor(put(put(emptyDraft, 'ankle', 1, 1), 'hip', 2, 2), { upright: 'plumb' })
    expect(placed(draft, 'head', { x: 3, y: 3 }, frame(1017))).toEqual({ kind: 'other frame', atMs: 1000 })
    const plumbed = put(draft, 'plumb top', 4, 4, 5)
    expect(plumbed.frames[0]?.atMs).toBe(1000)
    expect(visibleSlots(plumbed, 1000)).toEqual(['ankle', 'hip', 'plumb top'])
    expect(visibleSlots(plumbed, 5)).toEqual(['plumb top'])
    // The only point of a body may still go to another frame.
    expect(put(put(emptyDraft, 'ankle', 1, 1), 'ankle', 2, 2, 2000).frames[0]?.atMs).toBe(2000)
  })

  it('never takes the points of one measure along to the frame of another', () => {
    const tilt = put(put(emptyDraft, 'ankle', 1, 1), 'head', 2, 2)
    const plumbed = put(chosenFor(tilt, { upright: 'plumb' }), 'plumb top', 4, 4)
    const distance = put(chosenFor(plumbed, { kind: 'distance' }), 'near', 3, 3, 2000)
    expect(Object.keys(distance.points)).toEqual(['plumb top', 'near'])
    expect(droppedIn(plumbed, distance)).toEqual(['ankle', 'head'])
    const again = chosenFor(distance, { kind: 'tilt' })
    expect(visibleSlots(again, 2000)).toEqual(['plumb top'])
    expect(toTaken(again, null)?.points).toEqual({ 'plumb top': { x: 4, y: 4 } })
    // One step back brings them back, on the frame on which they were placed.
    const back = undone(again)
    expect(toTaken(back, null)).toMatchObject({ frames: [{ atMs: 1000 }], points: plumbed.points })
    expect(visibleSlots(back, 2000)).toEqual(['plumb top'])
    // On one frame the same points serve several measures.
    expect(droppedIn(plumbed, put(chosenFor(plumbed, { kind: 'distance' }), 'near', 3, 3))).toEqual([])
  })

  it('drops the later pair of a turn that is no later any more, and keeps one that is', () => {
    const turn = put(put(chosenFor(emptyDraft, { kind: 'turn' }), 'hip', 1, 1), 'later hip', 2, 2, 1100)
    expect(put(turn, 'hip', 3, 3, 1050).points).toEqual({ hip: { x: 3, y: 3 }, 'later hip': { x: 2, y: 2 } })
    const after = put(turn, 'hip', 3, 3, 1100)
    expect([after.frames[1], after.points]).toEqual([null, { hip: { x: 3, y: 3 } }])
    const later = put(turn, 'later hip', 5, 5, 1200)
    expect(later.points).toEqual({ hip: { x: 1, y: 1 }, 'later hip': { x: 5, y: 5 } })
  })

  it('after a step back in another measure has a point chosen that this one asks for', () => {
    const tilt = put(put(emptyDraft, 'ankle', 1, 1), 'head', 2, 2)
    const arms = chosenFor(tilt, { kind: 'arms' })
    expect(tilt.past.map(({ chosen }) => chosen)).toEqual(['ankle', 'ankle'])
    expect(undone(arms).chosen).toBe('shoulder')
    const next = put(undone(arms), undone(arms).chosen ?? 'ankle', 3, 3)
    expect(visibleSlots(next, 1000)).toContain('shoulder')
    expect(undone(chosenFor(tilt, { kind: 'flight' })).chosen).toBeNull()
  })

  it('wants the second pair of a turn on a later frame', () => {
    const first = put(put(chosenFor(emptyDraft, { kind: 'turn' }), 'hip', 1, 1), 'shoulder', 2, 2)
    for (const atMs of [900, 1000])
      expect(placed(first, 'later hip', { x: 3, y: 3 }, frame(atMs))).toEqual({ kind: 'not later', atMs: 1000 })
    const both = put(put(first, 'later hip', 3, 3, 1100), 'later shoulder', 4, 4, 1100)
    expect(toTaken(both, null)?.frames.map(({ atMs }) => atMs)).toEqual([1000, 1100])
  })

  it('takes the time of a frame that was learned only later', () => {
    const draft = placed(emptyDraft, 'ankle', { x: 1, y: 1 }, frame(1000, null))
    if ('atMs' in draft) throw new Error('it is placed')
    expect(toTaken(draft, 40_000)?.frames[0]?.frameUs).toBe(40_000)
    expect(toTaken(draft, null)?.frames[0]?.frameUs).toBeNull()
  })

  it('stays inside the picture, and steps back to the beginning', () => {
    const place = fc.record({ x: fc.integer({ min: -900, max: 900 }), y: fc.integer({ min: -900, max: 900 }) })
    const slots = fc.constantFrom('ankle' as const, 'hip' as const, 'shoulder' as const, 'head' as const)
    fc.assert(
      fc.property(fc.array(fc.tuple(slots, place), { maxLength: 20 }), (steps) => {
        let draft = emptyDraft
        for (const [slot, { x, y }] of steps) draft = put(draft, slot, x, y)
        for (const at of Object.values(draft.points)) {
          expect(at.x).toBeGreaterThanOrEqual(0)
          expect(at.x).toBeLessThanOrEqual(720)
          expect(at.y).toBeGreaterThanOrEqual(0)
          expect(at.y).toBeLessThanOrEqual(540)
        }
        for (const _ of steps) draft = undone(draft)
        expect(draft).toEqual(emptyDraft)
        expect(undone(draft)).toBe(draft)
      }),
      { seed: 11 },
    )
  })

  it('reads metres with a point or a comma, and nothing else', () => {
    expect(['1', ' 1.5 ', '0,75'].map(readMetres)).toEqual([1, 1.5, 0.75])
    expect(['', 'one', '-1', '1e3', '1,2,3'].map(readMetres)).toEqual([null, null, null, null, null])
  })
})

describe('a place on the screen', () => {
  it('is the same place of the film however large it is shown, between bars or without', () => {
    const size = { width: 720, height: 540 }
    const boxes = fc.record({
      left: fc.integer({ min: -200, max: 200 }),
      top: fc.integer({ min: -900, max: 200 }),
      width: fc.integer({ min: 100, max: 2000 }),
      height: fc.integer({ min: 100, max: 2000 }),
    })
    const spots = fc.record({
      x: fc.double({ min: 0, max: 720, noNaN: true }),
      y: fc.double({ min: 0, max: 540, noNaN: true }),
    })
    fc.assert(
      fc.property(boxes, spots, (box, spot) => {
        const scale = filmScale(box, size)
        const [across, down] = [box.width - size.width * scale, box.height - size.height * scale]
        expect(Math.min(Math.abs(across), Math.abs(down))).toBeLessThan(1e-6)
        const onScreen = { x: box.left + across / 2 + spot.x * scale, y: box.top + down / 2 + spot.y * scale }
        const back = toFilm(onScreen, box, size)
        expect(back.x).toBeCloseTo(spot.x, 6)
        expect(back.y).toBeCloseTo(spot.y, 6)
      }),
      { seed: 12 },
    )
  })
})
