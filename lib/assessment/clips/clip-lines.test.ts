import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { mostClips, readClipLines } from './clip-lines'

const link = 'https://clips.example/0012.mp4'
const bare = { line: 1, link, range: null, clip: null, start: null, end: null }
const at = (hours: number, minutes: number, seconds = 0) => hours * 3600 + minutes * 60 + seconds
const problemOf = (text: string): string => {
  const read = readClipLines(text)
  return read.ok ? 'none' : read.problems.map(({ message }) => message).join(' | ')
}

describe('a line of a list of clips', () => {
  it.each([
    [`${link} 17:42:05`, { start: at(17, 42, 5) }],
    [`${link}, 17:42`, { start: at(17, 42) }],
    [`${link}\t7:02:05-7:03:00`, { start: at(7, 2, 5), end: at(7, 3) }],
    [`${link}; 17:42:05–17:43:00`, { start: at(17, 42, 5), end: at(17, 43) }],
    [`${link} clip 12`, { clip: 12 }],
    [`${link}, 0012`, { clip: 12 }],
    [`${link} #12`, { clip: 12 }],
    [`clip 12, 17:42:05, ${link}`, { clip: 12, start: at(17, 42, 5) }],
    [`  ${link}  Clip12  17:42:05 `, { clip: 12, start: at(17, 42, 5) }],
    [`${link}#t=12,15 clip 3`, { clip: 3, range: { start: 12, end: 15 } }],
    ['/media/clips/101b-sound.webm 17:42', { link: '/media/clips/101b-sound.webm', start: at(17, 42) }],
  ])('is read: %s', (text, found) => {
    expect(readClipLines(text)).toEqual({ ok: true, clips: [{ ...bare, ...found }] })
  })

  it.each([
    ['17:42:05', 'no link'],
    [link, 'neither a clip number nor a time'],
    [`${link},17:42:05`, 'put a space or a tab'],
    [`${link} 25:00`, '"25:00" is no time of day'],
    [`${link} 17:60`, 'no time of day'],
    [`${link} 17:42:05-`, 'no time of day'],
    [`${link} 17:43-17:42`, 'must end later than it begins'],
    [`${link} 17:42-17:42`, 'must end later than it begins'],
    [`${link} 0`, 'no clip number'],
    [`${link} 10000`, 'no clip number'],
    [`${link} soon`, '"soon" is neither'],
    [`${link} 12 13`, 'two clip numbers'],
    [`${link} 17:42 17:43`, 'two times'],
    [`${link} ${link}b 12`, 'two links'],
    ['http:// 12', 'not a whole web address'],
    ['javascript:alert(1) 12', 'no link'],
    [`https://clips.example/${'a'.repeat(2000)} 12`, 'longer than 2,000'],
    [`${link}#t=18150233 12`, 'at most 24 hours'],
    [`${link}#t=12.0001,12.0004 12`, 'no moment of a video'],
    ['', 'no clip in it yet'],
  ])('is refused, saying what to do: %s', (text, message) => {
    expect(problemOf(text)).toMatch(/^Line 1: /)
    expect(problemOf(text)).toContain(message)
  })

  it('names each bad line by its number, empty ones counted, and takes none', () => {
    const text = `${link} 12\n\n${link}b soon\n\n${link}c 25:00`
    expect(problemOf(text)).toMatch(/^Line 3: .* \| Line 5: /)
  })

  it('refuses what stands there twice, a link or a number', () => {
    expect(problemOf(`${link} 12\n${link} 13`)).toContain('Line 2: it has the same link as line 1')
    expect(problemOf(`${link} 12\n${link}b 12`)).toContain('Line 2: clip 12 stands on line 1 too')
    expect(problemOf(`${link}#t=1,2 17:42\n${link}#t=5,9 17:43`)).toBe('none')
  })

  it('reads so many and no more', () => {
    const lines = (count: number) =>
      Array.from({ length: count }, (_, index) => `${link}${index} ${index + 1}`).join('\n')
    expect(problemOf(lines(mostClips))).toBe('none')
    expect(problemOf(lines(mostClips + 1))).toContain(`more than ${mostClips} clips`)
  })

  it('never throws, whatever is pasted', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 200 }), (text) => {
        const read = readClipLines(text)
        expect(read.ok ? read.clips.length : read.problems.length).toBeGreaterThan(0)
      }),
      { seed: 20_260_302, numRuns: 500 },
    )
  })
})
