import { describe, expect, it } from 'vitest'
import { instantAt } from '../wall-clock'
import { readClipLines } from './clip-lines'
import { linksOf, propose, type SaidClock } from './propose'
import { sayCameraClock, sayChoices, sayMatch, sayUnused } from './say-proposal'

const day = 20_514
const zone = 'Pacific/Chatham'
const instantOf = (second: number) => instantAt(day, Math.floor(second / 60), zone) + (second % 60) * 1000
const time = (hours: number, minutes: number, seconds = 0) => instantOf(hours * 3600 + minutes * 60 + seconds)
const asked: SaidClock = { behind: null, known: null }
const right: SaidClock = { behind: 0, known: null }

function proposed(text: string, waiting: Parameters<typeof propose>[0], said = asked) {
  const read = readClipLines(text)
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join(' '))
  return propose(waiting, read.clips, said, instantOf)
}

const second = { attempt: 'b', clip: 2, at: time(17, 45) }
const waiting = [{ attempt: 'a', clip: 1, at: time(17, 42, 20) }, second, { attempt: 'c', clip: 3, at: time(17, 50) }]
const film = (name: string) => `https://clips.example/${name}.mp4`

describe('a list of clips', () => {
  it('is proposed on the club’s own clock, and becomes moments only for what is chosen', () => {
    const found = proposed(`${film('a')} 17:42:05\n${film('b')} clip 2\n${film('x')} 18:30`, waiting, right)
    expect(found.matches).toEqual([
      { attempt: 'a', by: 'time', line: 1 },
      { attempt: 'b', by: 'number', line: 2 },
      { attempt: 'c', by: 'none' },
    ])
    expect(linksOf(found, waiting, [{ attempt: 'b', line: 2 }])).toEqual({
      ...{ ok: true, links: [{ attempt: 'b', link: film('b'), start: 0, end: null }] },
    })
  })

  it('is matched by a camera that is off by what the coach said, or as one clip that she knows shows', () => {
    const text = `${film('a')} 17:39:05\n${film('b')} 17:41:45`
    // By a clock of which nothing is known the first dive fits its neighbour's clip: that is not proposed.
    expect(proposed(text, waiting).matches).toMatchObject([
      { by: 'unclear', why: 'clock unknown', lines: [2] },
      { by: 'none' },
      { by: 'none' },
    ])
    for (const said of [
      { behind: 180_000, known: null },
      { behind: null, known: { attempt: 'a', line: 1 } },
    ]) {
      const found = proposed(text, waiting, said)
      expect(found.clock.behind).toBe(180_000)
      expect(found.matches).toMatchObject([{ by: 'time', line: 1 }, { by: 'time', line: 2 }, { by: 'none' }])
    }
  })

  it('takes the part around its mark for each dive of one long clip', () => {
    const found = proposed(`${film('all')} 17:40:00-18:00:00`, waiting, right)
    const picks = found.matches.flatMap((match) => ('line' in match ? [match] : []))
    expect(linksOf(found, waiting, picks)).toMatchObject({
      links: [
        { attempt: 'a', start: 110, end: 150 },
        { attempt: 'b', start: 270, end: 310 },
        { attempt: 'c', start: 570, end: 610 },
      ],
    })
  })

  it('refuses a choice that cannot be: nothing, twice, not there, one clip without a time for two', () => {
    const found = proposed(film('a').concat(' 1'), waiting)
    const message = (...picks: { attempt: string; line: number }[]) => {
      const links = linksOf(found, waiting, picks)
      return links.ok ? 'ok' : links.message
    }
    const a = { attempt: 'a', line: 1 }
    expect(message()).toContain('No clip is chosen')
    expect(message(a)).toBe('ok')
    for (const wrong of [{ attempt: 'a', line: 9 }, { attempt: 'z', line: 1 }, a])
      expect(message(a, wrong)).not.toBe('ok')
    expect(message(a, { attempt: 'b', line: 1 })).toContain('write the time of day')
  })
})

describe('what is said of it', () => {
  it('names how each was found, and what is left to the coach', () => {
    const first = { attempt: 'a', clip: 9, at: time(17, 43) }
    const found = proposed(`${film('a')} 17:42:20\n${film('b')} 17:43:05`, [first], right)
    const [match] = found.matches
    if (!match) throw new Error('nothing was matched')
    expect(sayMatch(match)).toBe('Unclear: several clips could be it. Choose one, or none.')
    expect(sayChoices(found, match, first)).toEqual([
      { value: '1', label: 'line 1 · tapped 0:40 into it · all of it' },
      { value: '2', label: 'line 2 · tapped before it begins · all of it' },
    ])
    expect(sayMatch({ attempt: 'a', by: 'number', line: 1 })).toBe('By its number.')
    expect(sayMatch({ attempt: 'a', by: 'none' })).toBe('No clip is near it.')
  })

  it('offers what is left over where nothing was found', () => {
    const found = proposed(`${film('a')} 17:42:05\n${film('x')} 12:00:00-12:20:00`, waiting, right)
    const none = found.matches.find(({ by }) => by === 'none')
    if (!none) throw new Error('all were matched')
    expect(sayChoices(found, none, second).map(({ value }) => value)).toEqual(['2'])
  })

  it('says the clock and where it is known from, and the lines that are left', () => {
    const clock = { behind: 200_000, clips: 3 } as const
    expect(sayCameraClock({ ...clock, from: 'numbers' })).toBe(
      'The camera’s clock is taken as 3 min 20 s behind, from three clips whose number and time are both there.',
    )
    expect(sayCameraClock({ ...clock, from: 'said' })).toContain('as you said')
    expect(sayCameraClock({ ...clock, from: 'known clip' })).toContain('from the clip that you know')
    expect(sayCameraClock({ behind: 0, clips: 0, from: 'nothing' })).toContain('Nothing here tells')
    expect(sayUnused([])).toBeNull()
    expect(sayUnused([3])).toBe('Line 3 of the list is not proposed for any dive.')
    expect(sayUnused([3, 5])).toBe('Lines 3 and 5 of the list are not proposed for any dive.')
  })
})
