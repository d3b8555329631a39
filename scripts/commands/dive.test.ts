import { describe, expect, it } from 'vitest'
import { dive, help } from './dive'

async function runDive(...args: string[]) {
  const written = { out: '', err: '' }
  const into = (stream: 'out' | 'err') => ({ write: (text: string) => (written[stream] += text) })
  const code = await dive(args, into('out'), into('err'))
  return { code, ...written }
}

describe('plumbline dive --json', () => {
  it('answers one array in the order given', async () => {
    const { code, out, err } = await runDive('5231 d', '101c', '--height', '3', '--json')
    expect(JSON.parse(out)).toEqual([
      {
        dive: '5231D',
        name: 'Back 1½ somersaults, ½ twist, free',
        height: 3,
        difficulty: 2,
        facets: {
          family: 'twisting',
          direction: 'back',
          facing: 'in',
          sense: 'backwards',
          halfSomersaults: 3,
          halfTwists: 1,
          flying: false,
          position: 'D',
          enters: 'head-first',
          entrySide: 'front',
        },
      },
      expect.objectContaining({ dive: '101C', name: 'Forward dive, tuck', height: 3, difficulty: 1.4 }),
    ])
    expect([code, err]).toEqual([0, ''])
  })

  it('takes 1 m when no height is given', async () => {
    const { out } = await runDive('--json', '401B')
    expect(JSON.parse(out)).toEqual([expect.objectContaining({ dive: '401B', height: 1, difficulty: 1.5 })])
  })

  it('answers a refused number in its place, and says so on stderr', async () => {
    const { code, out, err } = await runDive('401e', '103B', '405A', '--json')
    expect(JSON.parse(out)).toEqual([
      { dive: '401e', error: 'position E does not exist; it is A straight, B pike, C tuck or D free' },
      expect.objectContaining({ dive: '103B', difficulty: 1.7 }),
      {
        dive: '405A',
        error: '405A cannot be done at 1 m: the difficulty tables have no inward 2½ somersaults straight',
      },
    ])
    expect(code).toBe(1)
    expect(err.split('\n')).toEqual([
      'plumbline dive: "401e" is refused: position E does not exist; it is A straight, B pike, C tuck or D free',
      'plumbline dive: "405A" is refused: 405A cannot be done at 1 m: the difficulty tables have no inward 2½ somersaults straight',
      '',
    ])
  })
})

describe('plumbline dive', () => {
  it('writes a table', async () => {
    const { code, out, err } = await runDive('401b', '113B', '--height=3')
    expect(out.split('\n')).toEqual([
      'Dive  Name                                 Height  Difficulty  Faces  Turns     Enters      Entry side',
      '401B  Inward dive, pike                    3 m     1.4         in     forwards  head-first  front',
      '113B  Flying forward 1½ somersaults, pike  3 m     1.8         out    forwards  head-first  front',
      '',
    ])
    expect([code, err]).toEqual([0, ''])
  })

  it('writes no table when every number is refused', async () => {
    const { code, out, err } = await runDive('626C')
    expect([code, out]).toEqual([1, ''])
    expect(err).toContain('an armstand dive starts from a platform, not from a springboard')
  })

  it.each([
    [[], 'give at least one dive number'],
    [['--json'], 'give at least one dive number'],
    [['401B', '--height', '5'], '--height is 1 or 3'],
    [['401B', '--height'], 'height'],
    [['401B', '--colour'], '--colour'],
    [['401B', '--json=yes'], 'json'],
  ])('is not used as %j', async (args, message) => {
    const { code, out, err } = await runDive(...args)
    expect([code, out]).toEqual([2, ''])
    expect(err.split('\n')[0]).toContain(message)
    expect(err).toContain(help)
  })

  it.each(['--help', '-h'])('explains itself with %s', async (flag) => {
    expect(await runDive(flag)).toEqual({ code: 0, out: help, err: '' })
  })
})
