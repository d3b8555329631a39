import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { afterAll, beforeEach, describe, expect, it } from 'vitest'
import { type Prepared, type Rows, readPrepared, writePrepared } from './file'
import { type MadeOf, madeOf, seedFiles, whyUnfit } from './made-of'

const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'plumbline-prepared-'))
const made: MadeOf = { seed: 'a season', migrations: { '0001_tables': 'one', '0002_more': 'two' } }
const rows: Rows = new Map([
  ['Club', [{ id: 'a', name: 'Saltmarsh', board: true }]],
  [
    'Attempt',
    [
      { id: 'b', callId: null, flags: ['x'], ratings: { tuck: 3 } },
      { id: 'c', callId: 'd', flags: [], ratings: {} },
    ],
  ],
  ['Draft', []],
])

const read = (now = made): Prepared => readPrepared(folder, now)
const why = (now = made): string => {
  const prepared = read(now)
  return prepared.ok ? 'fits' : prepared.why
}

beforeEach(() => {
  writePrepared(rows, made, folder)
})
afterAll(() => fs.rmSync(folder, { recursive: true }))

describe('a prepared demo', () => {
  it('gives back the rows that were written, without empty tables', () => {
    const prepared = read()
    expect(prepared.ok && [...prepared.rows]).toEqual([...rows].filter(([table]) => table !== 'Draft'))
  })

  it('is written the same each time', () => {
    const bytes = () => ['about.json', 'rows.json.br'].map((name) => fs.readFileSync(path.join(folder, name), 'base64'))
    const first = bytes()
    writePrepared(rows, made, folder)
    expect(bytes()).toEqual(first)
  })

  it('that is cut short, changed or lost is refused with the file’s name', () => {
    const file = path.join(folder, 'rows.json.br')
    const whole = fs.readFileSync(file)
    fs.writeFileSync(file, whole.subarray(0, whole.length - 3))
    expect(why()).toBe(`${file} is damaged`)
    fs.writeFileSync(
      file,
      whole.map((byte, index) => (index === 20 ? byte ^ 1 : byte)),
    )
    expect(why()).toBe(`${file} is damaged`)
    fs.rmSync(file)
    expect(why()).toBe(`there is none in ${folder}`)
  })

  it('whose description is broken or of another version is refused', () => {
    const file = path.join(folder, 'about.json')
    const about = JSON.parse(fs.readFileSync(file, 'utf8'))
    for (const text of ['{', JSON.stringify({ ...about, format: 0 }), JSON.stringify({ ...about, seed: undefined })]) {
      fs.writeFileSync(file, text)
      expect(why()).toBe(`${file} cannot be read, or is of another version`)
    }
  })

  it('does not fit another season or a changed migration, and does fit a later one', () => {
    expect(why({ ...made, seed: 'another' })).toContain('the seed tells another season')
    expect(why({ ...made, migrations: { ...made.migrations, '0002_more': 'three' } })).toContain('0002_more changed')
    expect(why({ ...made, migrations: { '0001_tables': 'one' } })).toContain('0002_more changed')
    expect(why({ ...made, migrations: { ...made.migrations, '0003_later': 'three' } })).toBe('fits')
  })
})

describe('what it is made of', () => {
  it('is the curriculum and what the telling imports of the seed, not what loads it', () => {
    const files = seedFiles()
    expect(files).toContain('seed/demo/stories/northquay.ts')
    expect(files).toContain('seed/builders/people.ts')
    expect(files).toContain('seed/curriculum/programme.yaml')
    expect(files.filter((file) => /prepared|\.test\.|builders\/record/.test(file))).toEqual([])
  })

  it('fits itself', () => {
    expect(whyUnfit(madeOf(), madeOf())).toBeNull()
  })
})
