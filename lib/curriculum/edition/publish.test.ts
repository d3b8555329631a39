import { describe, expect, it } from 'vitest'
import { anAskedMeasure } from '@/tests/support/asked-measures'
import { anEvent, aPart } from '@/tests/support/dive-events'
import { tinyEdition } from '@/tests/support/tiny-edition'
import { canonicalJson } from '../canonical'
import { readEdition } from './publish'

const written = (change: (document: Record<string, unknown>) => void): unknown => {
  const document = JSON.parse(JSON.stringify(tinyEdition()))
  change(document)
  return document
}
const problems = (value: unknown) => {
  const reading = readEdition(value)
  if (reading.ok) throw new Error('the document was accepted')
  return reading.problems
}

describe('reading an edition', () => {
  it('gives the same bytes when the canonical form is read and written again', () => {
    const first = readEdition(tinyEdition())
    if (!first.ok) throw new Error(JSON.stringify(first.problems))
    const second = readEdition(JSON.parse(first.canonical))
    expect(second).toMatchObject({ ok: true, canonical: first.canonical, hash: first.hash })
    expect(first.hash).toMatch(/^[0-9a-f]{64}$/)
  })

  it('leaves an edition without events the bytes that it was, and keeps those that it has', () => {
    const plain = readEdition(tinyEdition())
    const eventful = readEdition(tinyEdition({ events: [anEvent('3m', [aPart(2, 1, 30)])] }))
    if (!plain.ok || !eventful.ok) throw new Error('refused')
    expect(plain.canonical).not.toContain('events')
    expect(readEdition(JSON.parse(eventful.canonical))).toMatchObject({ hash: eventful.hash })
    expect(eventful.document.events).toMatchObject([{ key: 'trophy', parts: [{ difficultyCap: 30 }] }])
  })

  it('leaves an edition without measures the bytes that it was, and keeps those that it has', () => {
    const plain = tinyEdition()
    const measured = plain.criteria.map((one, index) => (index === 3 ? { ...one, measure: anAskedMeasure() } : one))
    const [before, after] = [readEdition(plain), readEdition({ ...plain, criteria: measured })]
    if (!before.ok || !after.ok) throw new Error('refused')
    expect(before.canonical).toBe(canonicalJson(plain))
    expect(before.canonical).not.toContain('measure')
    expect(readEdition(JSON.parse(after.canonical))).toMatchObject({ hash: after.hash, canonical: after.canonical })
    expect(after.document.criteria[3]?.measure).toEqual(anAskedMeasure())
  })

  it('names an edition by what it says, not by the order of its keys', () => {
    const { title, ...rest } = tinyEdition()
    const reordered = readEdition({ ...rest, title })
    const plain = readEdition(tinyEdition())
    const other = readEdition(tinyEdition({ title: 'Small edition, mended' }))
    if (!reordered.ok || !plain.ok || !other.ok) throw new Error('refused')
    expect(reordered.hash).toBe(plain.hash)
    expect(other.hash).not.toBe(plain.hash)
  })
})

describe('an edition is refused with its places', () => {
  it.each([null, undefined, 7, 'text', []])('when it is no object: %j', (value) => {
    expect(problems(value)).toEqual([{ path: '', message: 'an edition is one JSON object' }])
  })

  it('when its schema version is missing or another', () => {
    expect(problems({})[0]?.message).toContain('does not say its schemaVersion')
    expect(problems(written((document) => Object.assign(document, { schemaVersion: 2 })))).toEqual([
      { path: '/schemaVersion', message: expect.stringContaining('reads schemaVersion 1, not 2') },
    ])
  })

  it.each<[string, (document: ReturnType<typeof tinyEdition>) => unknown, string, string]>([
    ['an unknown key', (d) => Object.assign(d.skills[0] as object, { colour: 'red' }), '/skills/0', 'colour'],
    ['a missing field', (d) => Reflect.deleteProperty(d.skills[0] as object, 'summary'), '/skills/0/summary', 'text'],
    [
      'an unknown place',
      (d) => Object.assign(d.skills[0]?.places[0] as object, { place: '2m' }),
      '/skills/0/places/0/place',
      '1m, 3m',
    ],
    [
      'a dive that does not exist',
      (d) => Object.assign(d.skills[3] as object, { dive: '101D' }),
      '/skills/3/dive',
      'position D (free) is for dives with a twist only',
    ],
    [
      'a dive in lower case',
      (d) => Object.assign(d.skills[3] as object, { dive: '101c' }),
      '/skills/3/dive',
      'write the dive as 101C',
    ],
    [
      'facets on a dive',
      (d) => Object.assign(d.skills[3] as object, { facets: { position: 'B' } }),
      '/skills/3/facets',
      'follow from its number',
    ],
    [
      'a rating out of range',
      (d) => Object.assign(d.criteria[0]?.expects[0] as object, { rating: 5 }),
      '/criteria/0/expects/0/rating',
      '0, 1, 2, 3 or 4',
    ],
    [
      'four anchors',
      (d) => Reflect.deleteProperty(d.criteria[0]?.anchors as object, 4),
      '/criteria/0/anchors/4',
      'text',
    ],
    [
      'an unknown kind of requirement',
      (d) => Object.assign(d.boardMoves[0] as object, { requirement: { kind: 'not' } }),
      '/boardMoves/0/requirement/kind',
      'signOff',
    ],
    [
      'an empty branch',
      (d) => Object.assign(d.boardMoves[0] as object, { requirement: { kind: 'all', of: [] } }),
      '/boardMoves/0/requirement/of',
      'at least one',
    ],
    [
      'an event on a platform',
      (d) => Object.assign(d, { events: [{ ...anEvent('3m', [aPart(1)]), place: '10m' }] }),
      '/events/0/place',
      'one of 1m, 3m',
    ],
    [
      'half a tenth',
      (d) => Object.assign(d, { events: [anEvent('3m', [aPart(1, 1, 9.5)])] }),
      '/events/0/parts/0/difficultyCap',
      'whole number',
    ],
    ['a bad key', (d) => Object.assign(d.skills[0] as object, { key: 'a@1m' }), '/skills/0/key', 'hyphens'],
    [
      'a cue with a drill',
      (d) => Object.assign(d.faults[0]?.corrections[0] as object, { drill: { skill: 'jump', place: '1m' } }),
      '/faults/0/corrections/0/drill',
      'names none',
    ],
    [
      'a cause that is no words',
      (d) => Object.assign(d.faults[0] as object, { causes: [5] }),
      '/faults/0/causes/0',
      'a cause is its words, or a text with the skills that match',
    ],
    [
      'a cause for skills that nobody can do',
      (d) => Object.assign(d.faults[0] as object, { causes: [{ text: 'Why.', match: { facing: ['up'] } }] }),
      '/faults/0/causes/0',
      'match',
    ],
    [
      'a correction for skills that nobody can do',
      (d) => Object.assign(d.faults[0]?.corrections[0] as object, { match: { facing: ['up'] } }),
      '/faults/0/corrections/0/match/facing/0',
      'out, in',
    ],
    ...(
      [
        ['a measure that nobody takes', { what: 'splash' }, '/what', 'bodyTilt, armAngle'],
        ['a measure at no instant', { at: 'landing' }, '/at', 'entry, highest point, passing, whole flight'],
        ['a measure in another unit', { unit: 'degrees' }, '/unit', 'distanceFromTip is stated in metres'],
        [
          'a band without an end',
          { bands: { ...anAskedMeasure().bands, 2: {} } },
          '/bands/2',
          'a least, a most, or both',
        ],
        ['a band that is missing', { bands: { 1: { least: 1 } } }, '/bands/2', 'a least, a most, or both'],
        [
          'a band of words',
          { bands: { ...anAskedMeasure().bands, 2: { least: 'far' } } },
          '/bands/2/least',
          'a number',
        ],
        ['what was published without a source', { basis: 'published' }, '/source', 'name their source'],
        ['a source of a judgement', { source: 'A book' }, '/source', 'others name none'],
      ] as const
    ).map(
      ([what, change, at, message]) =>
        [
          what,
          (d: ReturnType<typeof tinyEdition>) =>
            Object.assign(d.criteria[3] as object, { measure: { ...anAskedMeasure(), ...change } }),
          `/criteria/3/measure${at}`,
          message,
        ] as [string, (document: ReturnType<typeof tinyEdition>) => unknown, string, string],
    ),
    ['half a character', (d) => Object.assign(d, { title: 'half \ud800' }), '/title', 'surrogate'],
  ])('for %s', (_, change, path, message) => {
    const document = JSON.parse(JSON.stringify(tinyEdition()))
    change(document)
    expect(problems(document)).toContainEqual({ path, message: expect.stringContaining(message) })
  })

  it('with every problem at once', () => {
    const document = written((document) => Object.assign(document, { title: '', extra: 1, programme: 3 }))
    expect(
      problems(document)
        .map((problem) => problem.path)
        .sort(),
    ).toEqual(['', '/programme', '/title'])
  })
})
