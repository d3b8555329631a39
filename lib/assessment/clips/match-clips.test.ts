import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { findCameraClock } from './camera-clock'
import { type Clip, type Match, matchClips, type Waiting } from './match-clips'

const noon = Date.UTC(2026, 2, 2, 12)
const s = 1000
const waits = (attempt: string, clip: number, at: number): Waiting => ({ attempt, clip, at: noon + at * s })
const clip = (line: number, given: { clip?: number; from?: number; to?: number; ranged?: true }): Clip => ({
  line,
  clip: given.clip ?? null,
  start: given.from === undefined ? null : noon + given.from * s,
  end: given.to === undefined ? null : noon + given.to * s,
  ranged: given.ranged ?? false,
})

describe('by number', () => {
  it('comes first, whatever lies nearer in time', () => {
    const lines = [clip(1, { clip: 4 }), clip(2, { from: 0, to: 20 })]
    expect(matchClips([waits('a', 4, 10)], lines, 0)).toEqual([{ attempt: 'a', by: 'number', line: 1 }])
  })

  it('is not believed where the time says otherwise', () => {
    const lines = [clip(1, { clip: 4, from: 600, to: 620 }), clip(2, { clip: 5, from: 0, to: 20 })]
    expect(matchClips([waits('a', 4, 10)], lines, 0)).toEqual([
      { attempt: 'a', by: 'unclear', why: 'time disagrees', lines: [1, 2] },
    ])
  })

  it('of several dives in one clip wants its time of day, to tell where each lies', () => {
    const dives = [waits('a', 1, 10), waits('b', 1, 400)]
    const why = (lines: Clip[]) => matchClips(dives, lines, 0).map((match) => ('why' in match ? match.why : match.by))
    expect(why([clip(1, { clip: 1 })])).toEqual(['several dives', 'several dives'])
    expect(why([clip(1, { clip: 1, from: 0, ranged: true })])).toEqual(['several dives', 'several dives'])
    expect(why([clip(1, { clip: 1, from: 0 })])).toEqual(['number', 'number'])
  })
})

describe('by time', () => {
  const one = (at: number, ...lines: Clip[]) => matchClips([waits('a', 99, at)], lines, 0)[0]

  it('takes the clip that the mark falls into, or that ended shortly before', () => {
    for (const at of [0, 10, 20, 50])
      expect(one(at, clip(1, { from: 0, to: 20 }))).toMatchObject({ by: 'time', line: 1 })
    for (const at of [-20, 60]) expect(one(at, clip(1, { from: 0, to: 20 }))).toEqual({ attempt: 'a', by: 'none' })
  })

  it('leaves to the coach what lies between two clips, or in two that overlap', () => {
    const between = [clip(1, { from: 0, to: 20 }), clip(2, { from: 45, to: 60 })]
    expect(one(40, ...between)).toEqual({ attempt: 'a', by: 'unclear', why: 'several clips', lines: [1, 2] })
    expect(one(25, ...between)).toMatchObject({ by: 'time', line: 1 })
    const two = [clip(1, { from: 0, to: 300 }), clip(2, { from: 100, to: 200 })]
    expect(one(150, ...two)).toMatchObject({ why: 'several clips', lines: [1, 2] })
  })

  it('leaves several dives in a short clip to the coach, and lets a long one have them', () => {
    const dives = [waits('a', 98, 5), waits('b', 99, 15)]
    const by = (to: number) => matchClips(dives, [clip(1, { from: 0, to })], 0).map((match) => match.by)
    expect(by(20)).toEqual(['unclear', 'unclear'])
    expect(by(600)).toEqual(['time', 'time'])
  })

  it('does not take a clip that has another number', () => {
    expect(one(5, clip(1, { clip: 12, from: 0 }))).toEqual({
      ...{ attempt: 'a', by: 'unclear' },
      ...{ why: 'number differs', lines: [1] },
    })
  })
})

/** A session as it happened: each dive filmed in a clip of its own, marked some seconds after the clip began. */
const sessions = fc
  .array(
    fc.record({
      gap: fc.integer({ min: 90, max: 300 }),
      lead: fc.integer({ min: 3, max: 30 }),
      length: fc.integer({ min: 10, max: 25 }),
      fate: fc.constantFrom('both', 'both', 'both', 'no clip', 'not marked'),
    }),
    { minLength: 2, maxLength: 25 },
  )
  .map((dives) => {
    let at = 0
    return dives.map((dive, index) => {
      at += dive.gap
      return { ...dive, name: `dive ${index}`, number: index + 1, at }
    })
  })
  .filter((dives) => dives.some(({ fate }) => fate === 'both'))

type Session = Parameters<Parameters<typeof sessions.map>[0]>[0]
const marked = (dives: Session) =>
  dives.filter(({ fate }) => fate !== 'not marked').map(({ name, number, at, lead }) => waits(name, number, at + lead))
/** By a camera whose clock is `behind` seconds behind. */
const listed = (dives: Session, behind: number, what: (dive: Session[number]) => { number: boolean; to: boolean }) =>
  dives
    .filter(({ fate }) => fate !== 'no clip')
    .map((dive) => {
      const { number, to } = what(dive)
      const from = dive.at - behind
      return clip(dive.number + 100, {
        ...(number ? { clip: dive.number } : {}),
        ...{ from, ...(to ? { to: from + dive.length } : {}) },
      })
    })
const truth = (dives: Session, by: 'number' | 'time') =>
  dives
    .filter(({ fate }) => fate !== 'not marked')
    .map(({ name, number, fate }) =>
      fate === 'both' ? { attempt: name, by, line: number + 100 } : { attempt: name, by: 'none' },
    )
const clocks = fc.integer({ min: -7200, max: 7200 })
const law = { seed: 20_260_302, numRuns: 400 }

describe('a simulated session', () => {
  it('is recovered exactly by time, by a camera whose clock is off, from one clip that is known; clips are missing', () => {
    fc.assert(
      fc.property(sessions, clocks, fc.boolean(), fc.nat(), (dives, behind, to, pick) => {
        const [waiting, lines] = [marked(dives), listed(dives, behind, () => ({ number: false, to }))]
        const sure = dives.filter(({ fate }) => fate === 'both')
        const one = sure[pick % sure.length]
        const known = { attempt: one?.name ?? '', line: (one?.number ?? 0) + 100 }
        const clock = findCameraClock(waiting, lines, known)
        expect(clock.from).toBe('known clip')
        expect(matchClips(waiting, lines, clock.behind)).toEqual(truth(dives, 'time'))
      }),
      law,
    )
  })

  it('is recovered exactly by number, and the clock found with it', () => {
    fc.assert(
      fc.property(sessions, clocks, fc.boolean(), (dives, behind, to) => {
        const [waiting, lines] = [marked(dives), listed(dives, behind, () => ({ number: true, to }))]
        const clock = findCameraClock(waiting, lines, null)
        expect(Math.abs(clock.behind / s - behind)).toBeLessThanOrEqual(15)
        expect(matchClips(waiting, lines, clock.behind)).toEqual(truth(dives, 'number'))
      }),
      law,
    )
  })

  it('with numbers on some lines only still never links an attempt to another’s clip', () => {
    fc.assert(
      fc.property(sessions, clocks, fc.integer({ min: 2, max: 4 }), (dives, behind, every) => {
        const waiting = marked(dives)
        const lines = listed(dives, behind, ({ number }) => ({ number: number % every === 0, to: true }))
        const clock = findCameraClock(waiting, lines, null)
        // Without any number that is met the clock of the camera is anybody's guess, and the page says so.
        fc.pre(clock.from === 'numbers')
        for (const match of matchClips(waiting, lines, clock.behind))
          if ('line' in match) expect(match.line).toBe(Number(match.attempt.slice('dive '.length)) + 101)
      }),
      law,
    )
  })
})

/** Anything at all: overlapping clips, repeated numbers, marks in a heap. */
const heaps = fc.record({
  waiting: fc
    .uniqueArray(
      fc.record({ attempt: fc.nat(40).map(String), clip: fc.integer({ min: 1, max: 6 }), at: fc.nat(900) }),
      {
        selector: ({ attempt }) => attempt,
        maxLength: 14,
      },
    )
    .map((all) => all.map(({ attempt, clip: number, at }) => waits(attempt, number, at))),
  clips: fc
    .uniqueArray(
      fc.record({
        line: fc.integer({ min: 1, max: 40 }),
        clip: fc.option(fc.integer({ min: 1, max: 6 })),
        from: fc.option(fc.nat(900)),
        length: fc.option(fc.integer({ min: 1, max: 400 })),
        ranged: fc.boolean(),
      }),
      { selector: ({ line }) => line, maxLength: 14 },
    )
    .map((all) =>
      all
        .filter(({ clip: number }, index) => number === null || all.findIndex((one) => one.clip === number) === index)
        .map(({ line, clip: number, from, length, ranged }) => ({
          ...{ line, clip: number, ranged, start: from === null ? null : noon + from * s },
          end: from === null || length === null ? null : noon + (from + length) * s,
        })),
    ),
  behind: fc.integer({ min: -300, max: 300 }).map((seconds) => seconds * s),
})

describe('whatever is matched', () => {
  it('names each attempt once, and only lines that are there; what is unclear is linked to nothing', () => {
    fc.assert(
      fc.property(heaps, ({ waiting, clips, behind }) => {
        const matches = matchClips(waiting, clips, behind)
        expect(matches.map(({ attempt }) => attempt).sort()).toEqual(waiting.map(({ attempt }) => attempt).sort())
        const lines = clips.map(({ line }) => line)
        for (const match of matches) {
          if ('lines' in match) expect(match.lines.length).toBeGreaterThan(0)
          for (const line of 'lines' in match ? match.lines : 'line' in match ? [match.line] : [])
            expect(lines).toContain(line)
        }
      }),
      law,
    )
  })

  it('does not depend on the order of either list', () => {
    const shuffled = heaps.chain((heap) =>
      fc.record({
        heap: fc.constant(heap),
        waiting: fc.shuffledSubarray([...heap.waiting], { minLength: heap.waiting.length }),
        clips: fc.shuffledSubarray([...heap.clips], { minLength: heap.clips.length }),
      }),
    )
    fc.assert(
      fc.property(shuffled, ({ heap, waiting, clips }) => {
        const ordered: Match[] = matchClips(heap.waiting, heap.clips, heap.behind)
        expect(matchClips(waiting, clips, heap.behind)).toEqual(ordered)
        expect(findCameraClock(waiting, clips, null)).toEqual(findCameraClock(heap.waiting, heap.clips, null))
      }),
      law,
    )
  })

  it('moves with both clocks: a session an hour later is matched alike', () => {
    fc.assert(
      fc.property(heaps, ({ waiting, clips, behind }) => {
        const hour = 3_600_000
        const moved = waiting.map((one) => ({ ...one, at: one.at + hour }))
        expect(matchClips(moved, clips, behind + hour)).toEqual(matchClips(waiting, clips, behind))
      }),
      law,
    )
  })
})
