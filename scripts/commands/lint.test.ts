import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, describe, expect, it } from 'vitest'
import { tinyEdition } from '@/tests/support/tiny-edition'
import { help, lint } from './lint'

const folders: string[] = []
const folder = (): string => {
  const path = mkdtempSync(join(tmpdir(), 'lint-'))
  folders.push(path)
  return path
}
afterEach(() => {
  for (const path of folders.splice(0)) rmSync(path, { recursive: true })
})

/** The demo curriculum in a folder of its own, with one text replaced in one file. */
function demoWith(file: string, from: string, to: string): string {
  const path = folder()
  cpSync('seed/curriculum', path, { recursive: true })
  const text = readFileSync(join(path, file), 'utf8')
  expect(text, `${file} has the text that is replaced`).toContain(from)
  writeFileSync(join(path, file), text.replace(from, to))
  return path
}

function jsonFile(content: string | Uint8Array): string {
  const path = join(folder(), 'edition.json')
  writeFileSync(path, content)
  return path
}

async function run(...args: string[]): Promise<{ code: number; out: string; err: string }> {
  const written = { out: '', err: '' }
  const sink = (to: 'out' | 'err') => ({ write: (text: string) => (written[to] += text) })
  const code = await lint(args, sink('out'), sink('err'))
  return { code, ...written }
}

describe('a curriculum with nothing wrong', () => {
  it('exits with 0 and says what was read', async () => {
    const { code, out } = await run('seed/curriculum')
    expect(out).toMatch(/^Five families, first edition: \d+ skills at \d+ places, .*nothing wrong\n$/)
    expect(code).toBe(0)
  })

  it('is an empty array with --json', async () => {
    expect(await run('seed/curriculum', '--json')).toEqual({ code: 0, out: '[]\n', err: '' })
  })
})

describe('a curriculum with something wrong', () => {
  it('exits with 1 and names the line of the file', async () => {
    const path = demoWith('skills/4-forward-dives.yaml', 'skill: tuck-jump', 'skill: tuck-jmp')
    const line = readFileSync(join(path, 'skills/4-forward-dives.yaml'), 'utf8')
      .split('\n')
      .findIndex((text) => text.includes('tuck-jmp'))
    const { code, out } = await run(path)
    expect(code).toBe(1)
    expect(out).toContain(
      `${path}/skills/4-forward-dives.yaml:${line + 1}: the prerequisite of 101C-standing at 1 m names a skill tuck-jmp that this edition does not have`,
    )
  })

  it('says it as JSON, with a code', async () => {
    const path = demoWith('criteria/10-safety.yaml', 'skills: [push-glide, back-glide] }', 'skills: [deep-water] }')
    const { code, out } = await run(path, '--json')
    expect(code).toBe(1)
    expect(JSON.parse(out)).toContainEqual({
      file: join(path, 'skills/1-safety.yaml'),
      line: expect.any(Number),
      code: 'no-critical-criterion',
      message: expect.stringContaining('has no critical criterion'),
    })
  })

  it('reads one JSON document, and knows its lines', async () => {
    const { skills, ...rest } = tinyEdition()
    const broken = { ...rest, skills: skills.filter((skill) => skill.key !== 'tread') }
    const path = jsonFile(JSON.stringify(broken, null, 2))
    const { code, out } = await run(path)
    expect(code).toBe(1)
    const line = readFileSync(path, 'utf8')
      .split('\n')
      .findIndex((text) => text.includes('"tread"'))
    expect(out).toMatch(new RegExp(`^${path}:${line + 1}: level One names a skill tread`, 'm'))
  })
})

describe('bad input is named at its place', () => {
  it.each([
    [
      'malformed YAML',
      'programme.yaml',
      'levelMap: {}',
      'levelMap: {',
      /programme\.yaml:\d+: this is not YAML that can be read/,
    ],
    [
      'a key that stands twice',
      'programme.yaml',
      'levelMap: {}',
      'levelMap: {}\nlevelMap: {}',
      /programme\.yaml:\d+: .*unique/,
    ],
    [
      'an unknown key',
      'skills/4-forward-dives.yaml',
      'dive: 101C\n',
      'dive: 101C\n  colour: red\n',
      /4-forward-dives\.yaml:\d+: .*Unrecognized key: "colour"/,
    ],
    [
      'an unknown dive',
      'skills/4-forward-dives.yaml',
      'dive: 101B',
      'dive: 191B',
      /4-forward-dives\.yaml:\d+: \/skills\/\d+\/dive: /,
    ],
    [
      'another schema version',
      'programme.yaml',
      'schemaVersion: 1',
      'schemaVersion: 7',
      /programme\.yaml:3: .*reads schemaVersion 1, not 7/,
    ],
    [
      'a place that does not exist',
      'skills/4-forward-dives.yaml',
      'place: 3m',
      'place: 2m',
      /4-forward-dives\.yaml:\d+: .*a place is one of/,
    ],
    [
      'a title that is too long',
      'criteria/1-start.yaml',
      'A still, tall start',
      'A still and very tall and patient start',
      /1-start\.yaml:\d+: .*at most 32/,
    ],
  ])('%s in a folder', async (_, file, from, to, expected) => {
    const { code, out } = await run(demoWith(file, from, to))
    expect(out).toMatch(expected)
    expect(code).toBe(1)
  })

  it('a file that is no list', async () => {
    const path = demoWith('skills/4-forward-dives.yaml', '', '')
    writeFileSync(join(path, 'skills/4-forward-dives.yaml'), 'key: 101C\n')
    const { code, out } = await run(path)
    expect(out).toBe(`${path}/skills/4-forward-dives.yaml:1: the file holds a list: begin each item with "- "\n`)
    expect(code).toBe(1)
  })

  it('a folder without a programme', async () => {
    const { code, out } = await run(folder())
    expect(out).toMatch(/programme\.yaml:1: the file cannot be read: /)
    expect(code).toBe(1)
  })

  it.each<[string, string | Uint8Array, RegExp]>([
    ['malformed JSON', '{\n  "schemaVersion": 1,\n  oops\n}', /edition\.json:3: this is not JSON that can be read/],
    ['JSON that ends early', '{\n  "schemaVersion": 1,\n', /edition\.json:3: this is not JSON/],
    ['an empty file', '', /edition\.json:1: this is not JSON/],
    ['a key twice', '{ "schemaVersion": 1,\n"title": "a",\n"title": "b" }', /edition\.json:3: .*unique/],
    ['a key twice, once escaped', '{ "title": "a",\n"\\u0074itle": "b" }', /edition\.json:2: .*unique/],
    ['an array', '[]', /edition\.json:1: .*one JSON object/],
    [
      'bytes that are not UTF-8',
      new Uint8Array([0x7b, 0xff, 0x7d]),
      /edition\.json:1: the file cannot be read: it is not UTF-8/,
    ],
  ])('%s', async (_, content, expected) => {
    const { code, out } = await run(jsonFile(content))
    expect(out).toMatch(expected)
    expect(code).toBe(1)
  })
})

describe('usage', () => {
  it.each([[[]], [['a', 'b']], [['--loud', 'seed/curriculum']], [['no-such-folder']]])(
    '%j exits with 2',
    async (args) => {
      const { code, out, err } = await run(...args)
      expect(code).toBe(2)
      expect(out).toBe('')
      expect(err).toMatch(/^plumbline lint: /)
      expect(err).toContain('Usage: plumbline lint PATH [--json]')
    },
  )

  it('--help explains it and exits with 0', async () => {
    expect(await run('--help')).toEqual({ code: 0, out: help, err: '' })
  })
})
