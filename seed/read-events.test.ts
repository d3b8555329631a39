import { cpSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, describe, expect, it } from 'vitest'
import { readCurriculumFolder } from './read-curriculum'

const folders: string[] = []
afterEach(() => {
  for (const path of folders.splice(0)) rmSync(path, { recursive: true })
})

function withEvents(yaml: string | null) {
  const path = mkdtempSync(join(tmpdir(), 'events-'))
  folders.push(path)
  cpSync('seed/curriculum', path, { recursive: true })
  rmSync(join(path, 'events.yaml'), { force: true })
  if (yaml !== null) writeFileSync(join(path, 'events.yaml'), yaml)
  return readCurriculumFolder(path)
}

describe('the events of a curriculum', () => {
  it('are none without their file', () => {
    expect(withEvents(null).document?.events).toBeUndefined()
  })

  it('are read from their file, with what an author may leave out', () => {
    const short = '- { key: trophy, title: Autumn trophy, season: 2026, place: 3m, parts: [{ count: 2 }] }'
    expect(withEvents(short).document?.events).toEqual([
      {
        key: 'trophy',
        title: 'Autumn trophy',
        season: 2026,
        place: '3m',
        ageBand: { from: null, to: null },
        parts: [{ count: 2, distinctFamilies: 1, difficultyCap: null }],
      },
    ])
    const banded = `${short.slice(0, -2)}, ageBand: { from: 12 } }`
    expect(withEvents(banded).document?.events?.[0]?.ageBand).toEqual({ from: 12, to: null })
  })

  it('are refused with their line', () => {
    const reading = withEvents('- key: trophy\n  title: Autumn trophy\n  season: soon\n  place: 3m\n  parts: []')
    expect(reading.problems).toEqual([
      { place: expect.stringMatching(/events\.yaml:3$/), message: '/events/0/season: a season is a whole number' },
      { place: expect.stringMatching(/events\.yaml:5$/), message: '/events/0/parts: an event has at least one part' },
    ])
  })
})
