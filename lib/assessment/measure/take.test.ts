import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { measureTaken, type Taking } from './take'
import { askedFor, type Frame, type OfFlight, type OnFrames, type Slot, takenKinds } from './taken'
import { onFramesSchema, takenSchema } from './taken-schema'
import { nameKept, sayInterval, sayOtherWay, sayProblem, sayValue } from './wording-taken'

const frame: Frame = { atMs: 1000, frameUs: 16_667, width: 720, height: 540 }
const points: OnFrames['points'] = {
  ankle: { x: 300, y: 400 },
  hip: { x: 310, y: 320 },
  shoulder: { x: 320, y: 240 },
  head: { x: 325, y: 200 },
  hand: { x: 335, y: 140 },
  near: { x: 360, y: 395 },
  tip: { x: 300, y: 410 },
  board: { x: 180, y: 412 },
  'length from': { x: 100, y: 400 },
  'length to': { x: 100, y: 300 },
  'later hip': { x: 330, y: 300 },
  'later shoulder': { x: 400, y: 280 },
  'plumb top': { x: 60, y: 100 },
  'plumb bottom': { x: 60, y: 500 },
  'edge left': { x: 20, y: 410 },
  'edge right': { x: 300, y: 410 },
}
const taken = (kind: OnFrames['kind'], changes: Partial<OnFrames> = {}): OnFrames => ({
  kind,
  frames: kind === 'turn' ? [frame, { ...frame, atMs: 1100 }] : [frame],
  points,
  upright: 'plumb',
  down: false,
  metres: 1,
  pixel: 2,
  ...changes,
})
const flight: OfFlight = {
  kind: 'flight',
  leaves: { atMs: 1017, frameUs: 16_667 },
  meets: { atMs: 2050, frameUs: 16_667 },
  top: null,
  drop: { value: 1, sd: 0.1 },
}
const numberOf = (taking: Taking, index = 0) => (taking.ok ? taking.results[index]?.value : undefined)
const problem = (taking: Taking) => (taking.ok ? null : taking.problem.kind)
const without = (...slots: Slot[]) =>
  Object.fromEntries(Object.entries(points).filter(([slot]) => !slots.includes(slot as Slot)))

describe('what was taken', () => {
  it('gives each kind its numbers, with an interval around each', () => {
    for (const kind of takenKinds) {
      const taking = measureTaken(kind === 'flight' ? flight : taken(kind), 1)
      if (!taking.ok) throw new Error(sayProblem(taking.problem))
      expect(taking.results.length).toBe({ arms: 2, distance: 2, turn: 2, flight: 4 }[kind as string] ?? 1)
      for (const { value, low, high, sd } of taking.results) {
        expect(sd).toBeGreaterThan(0)
        expect(low).toBeLessThan(value)
        expect(high).toBeGreaterThanOrEqual(value)
      }
    }
  })

  it('reads a coach’s own picture: tilt, clock face, level distance by the known length, both ways of straightening', () => {
    expect(numberOf(measureTaken(taken('tilt'), 1))).toBeCloseTo(7.1, 1)
    expect(numberOf(measureTaken(taken('arms'), 1), 1)).toBeCloseTo(12 - 12 + 8.53 / 30, 2)
    expect(numberOf(measureTaken(taken('distance'), 1))).toBeCloseTo(0.6, 9)
    expect(numberOf(measureTaken(taken('distance', { upright: 'level' }), 1))).toBeCloseTo(0.6, 9)
    const trusting = measureTaken(taken('tilt', { upright: 'picture' }), 1)
    const plumbed = measureTaken(taken('tilt'), 1)
    if (!trusting.ok || !plumbed.ok) throw new Error('both are measured')
    expect(trusting.results[0]?.sd).toBeGreaterThan(plumbed.results[0]?.sd ?? NaN)
  })

  it('asks to check what can hardly be, and says when a body is bent', () => {
    const far = taken('distance', { points: { ...points, near: { x: 700, y: 400 } } })
    const taking = measureTaken(far, 1)
    expect(taking.ok && taking.results[0]?.check).toBe(true)
    const straight = measureTaken(taken('tilt'), 1)
    expect(straight.ok && straight.cautions).toEqual([])
    const piked = measureTaken(taken('tilt', { points: { ...points, head: { x: 420, y: 390 } } }), 1)
    expect(piked.ok && piked.cautions).toEqual(['bent'])
    const short = measureTaken({ ...flight, meets: { atMs: 1300, frameUs: 16_667 } }, 1)
    expect(short.ok && short.results.map(({ check }) => check)).toEqual([true, true, true, true])
  })

  it('tells a body behind the tip from one in front of it, whichever way the board points', () => {
    const at = (x: number, y: number, board = points.board) =>
      measureTaken(taken('distance', { points: { ...points, board, near: { x, y } } }), 1)
    const read = (taking: Taking) =>
      taking.ok && { said: taking.results.map(sayValue), check: taking.results[0]?.check, cautions: taking.cautions }
    expect(read(at(380, 400))).toEqual({ said: ['0.80 m', '0.10 m above'], check: false, cautions: [] })
    const behind = { said: ['0.80 m over the board', '0.10 m above'], check: true, cautions: ['behind the tip'] }
    expect(read(at(220, 400))).toEqual(behind)
    expect(read(at(380, 400, { x: 420, y: 408 }))).toEqual(behind)
    expect(read(at(380, 512))).toMatchObject({ said: ['0.80 m', '1.02 m below'], cautions: ['not passing'] })
  })

  it('shows how far a trunk turned, and asks to check near half a turn', () => {
    const turned = (degrees: number) => {
      const [x, y] = [Math.sin((degrees * Math.PI) / 180), -Math.cos((degrees * Math.PI) / 180)]
      const shoulder = { x: 310, y: 240 }
      const later = { 'later hip': { x: 330, y: 300 }, 'later shoulder': { x: 330 + 80 * x, y: 300 + 80 * y } }
      const frames = [frame, { ...frame, atMs: 1400 }]
      const taking = measureTaken(taken('turn', { frames, points: { ...points, shoulder, ...later } }), 1)
      return taking.ok ? taking.results.map((one) => [sayValue(one), one.check]) : []
    }
    expect(turned(140)).toEqual([
      ['350°/s clockwise', false],
      ['140.0° clockwise', false],
    ])
    expect(turned(155)[1]).toEqual(['155.0° clockwise', true])
    expect(turned(216)).toEqual([
      ['360°/s anticlockwise', false],
      ['144.0° anticlockwise', false],
    ])
    expect([-144, 150].map((value) => sayOtherWay({ value }))).toEqual(['216.0° clockwise', '210.0° anticlockwise'])
  })

  it('asks to look at an upright that no camera is held by, and takes its ends by where they lie', () => {
    const swapped = { 'plumb top': points['plumb bottom'], 'plumb bottom': points['plumb top'] }
    expect(measureTaken(taken('arms', { points: { ...points, ...swapped } }), 1)).toEqual(
      measureTaken(taken('arms'), 1),
    )
    const edges = { 'edge left': points['edge right'], 'edge right': points['edge left'] }
    const level = (more: OnFrames['points']) =>
      measureTaken(taken('tilt', { upright: 'level', points: { ...points, ...more } }), 1)
    expect(level(edges)).toEqual(level({}))
    const leaning = (x: number) => {
      const taking = measureTaken(taken('arms', { points: { ...points, 'plumb top': { x, y: 100 } } }), 1)
      return taking.ok && taking.cautions
    }
    // 400 pixels high: 20° are 146 to the side.
    expect([leaning(200), leaning(210)]).toEqual([[], ['upright askew']])
  })

  it('adds what the highest point says', () => {
    const taking = measureTaken({ ...flight, top: { atMs: 1400, frameUs: 16_667 } }, 1)
    expect(taking.ok && taking.results.map(({ what }) => what).slice(4)).toEqual(['takeOffSpeedByPeak', 'dropByPeak'])
  })

  it('is refused in plain words where it cannot be', () => {
    const cases: [OnFrames | OfFlight, string][] = [
      [taken('arms', { points: without('hand') }), 'missing'],
      [taken('tilt', { points: without('plumb top') }), 'missing'],
      [taken('tilt', { points: without('ankle', 'hip', 'shoulder') }), 'too few'],
      [taken('arms', { points: { ...points, hand: { x: 321, y: 243 } } }), 'too close'],
      [taken('arms', { points: { ...points, 'plumb top': { x: 60, y: 498 } } }), 'too close'],
      [taken('hip', { points: { ...points, hip: { x: -1, y: 20 } } }), 'outside'],
      [taken('distance', { points: without('board') }), 'missing'],
      [taken('distance', { points: { ...points, board: { x: 293, y: 410 } } }), 'side'],
      [taken('distance', { points: { ...points, board: { x: 200, y: 530 } } }), 'side'],
      [taken('distance', { metres: null }), 'length'],
      [taken('distance', { metres: 0 }), 'length'],
      [taken('distance', { metres: Number.NaN }), 'length'],
      [taken('turn', { frames: [frame] }), 'missing'],
      [taken('turn', { frames: [frame, frame] }), 'order'],
      [
        taken('turn', {
          frames: [
            { ...frame, frameUs: null },
            { ...frame, atMs: 1100 },
          ],
        }),
        'frame unknown',
      ],
      [{ ...flight, meets: flight.leaves }, 'order'],
      [{ ...flight, top: { atMs: 3000, frameUs: null } }, 'order'],
      [{ ...flight, meets: { atMs: 2050, frameUs: 40_000 }, top: { atMs: 2033, frameUs: null } }, 'order'],
      [{ ...flight, leaves: { atMs: 5, frameUs: null } }, 'frame unknown'],
      [{ ...flight, drop: { value: 40, sd: 0.1 } }, 'drop'],
      [{ ...flight, drop: { value: Number.NaN, sd: 0.1 } }, 'drop'],
    ]
    for (const [one, kind] of cases) {
      const taking = measureTaken(one, 1)
      expect(problem(taking)).toBe(kind)
      if (!taking.ok) expect(sayProblem(taking.problem)).toMatch(/\.$/)
    }
    expect(problem(measureTaken(flight, null))).toBe('no board')
  })

  it('never throws, whatever a browser sends', () => {
    const place = fc.record({ x: fc.double(), y: fc.double() })
    const any = fc.record({
      kind: fc.constantFrom('tilt', 'arms', 'hip', 'distance', 'turn'),
      frames: fc.array(fc.constant(frame), { maxLength: 3 }),
      points: fc.dictionary(fc.constantFrom(...Object.keys(points)), place),
      upright: fc.constantFrom('picture', 'plumb', 'level'),
      down: fc.boolean(),
      metres: fc.option(fc.double()),
      pixel: fc.double({ min: 0.25, max: 40, noNaN: true }),
    })
    fc.assert(
      fc.property(any, (sent) => {
        const parsed = onFramesSchema.safeParse(sent)
        if (parsed.success) expect(typeof measureTaken(parsed.data as OnFrames, 1).ok).toBe('boolean')
      }),
      { seed: 10, numRuns: 500 },
    )
  })
})

describe('the schema', () => {
  it('takes what is kept, and no name or number that cannot be', () => {
    for (const one of [...takenKinds].map((kind) => (kind === 'flight' ? flight : taken(kind))))
      expect(takenSchema.parse(one)).toEqual(one)
    expect(takenSchema.safeParse({ ...taken('hip'), points: { knee: { x: 1, y: 1 } } }).success).toBe(false)
    expect(takenSchema.safeParse({ ...taken('hip'), frames: [] }).success).toBe(false)
    expect(takenSchema.safeParse({ ...taken('hip'), pixel: 0 }).success).toBe(false)
  })
})

describe('what is asked for', () => {
  it('is each point once, and a line for the upright only where up matters', () => {
    for (const kind of takenKinds.filter((one) => one !== 'flight'))
      for (const upright of ['picture', 'plumb', 'level'] as const) {
        const names = askedFor(kind, upright).map(({ slot }) => slot)
        expect(new Set(names).size).toBe(names.length)
        const lines = names.filter((slot) => /plumb|edge/.test(slot)).length
        expect(lines).toBe(upright === 'picture' || kind === 'hip' || kind === 'turn' ? 0 : 2)
      }
  })
})

describe('a result in words', () => {
  it('has its unit, its side and the sign of an interval', () => {
    expect(sayValue({ what: 'bodyTilt', value: 7.06 })).toBe('7.1° clockwise')
    expect(sayValue({ what: 'armAngle', value: -31 })).toBe('31.0° anticlockwise')
    expect(sayValue({ what: 'bodyTilt', value: -0.01 })).toBe('0.0°')
    expect(sayValue({ what: 'flightTime', value: 1.0334 })).toBe('1.033 s')
    expect(sayValue({ what: 'clockHour', value: 11.2 })).toBe('11.2 o’clock')
    expect(sayInterval({ what: 'bodyTilt' }, { low: -2.04, high: 3 })).toBe('−2.0 to 3.0°')
  })

  it('is an hour as a clock has it, just past twelve and in an interval around it too', () => {
    const past = measureTaken(taken('arms', { points: { ...points, hand: { x: 325.2, y: 141 } } }), 1)
    const hour = past.ok ? past.results[1] : undefined
    if (!hour) throw new Error('the arms are measured')
    expect(sayValue(hour)).toBe('12.1 o’clock')
    expect(sayInterval(hour, hour)).toBe('12.0 to 12.2 o’clock')
    const said = (value: number) => sayValue({ what: 'clockHour', value })
    expect([0.04, 0.96, 0.94, 11.96, 12, 12.3].map(said)).toEqual(
      ['12.0', '1.0', '12.9', '12.0', '12.0', '12.3'].map((hours) => `${hours} o’clock`),
    )
    expect(sayInterval({ what: 'clockHour' }, { low: -0.1, high: 0.3 })).toBe('11.9 to 12.3 o’clock')
    expect(sayInterval({ what: 'clockHour' }, { low: 11.8, high: 12.4 })).toBe('11.8 to 12.4 o’clock')
  })

  it('says of arms that they were measured from straight down', () => {
    expect([taken('arms'), taken('arms', { down: true }), taken('tilt'), flight].map(nameKept)).toEqual([
      'Arms',
      'Arms, from straight down',
      'Tilt of the body’s line',
      'Flight',
    ])
  })
})
