import { v7 } from 'uuid'
import { describe, expect, it } from 'vitest'
import { momentSchema } from '@/lib/assessment/deck/contract'
import { type MomentText, readMoment, readSeconds, withLink } from './moment-text'

const typed = (changes: Partial<MomentText> = {}): MomentText => ({
  id: v7(),
  link: 'https://video.example/clip',
  start: '12.4',
  end: '15',
  ...changes,
})
const errorsOf = (changes: Partial<MomentText>) => {
  const reading = readMoment(typed(changes))
  return reading.ok ? {} : reading.errors
}

describe('readSeconds', () => {
  it.each([
    ['12', 12],
    ['12.4', 12.4],
    ['12,4', 12.4],
    [' 0 ', 0],
    ['01:02.5', 62.5],
    ['1:02.5', 62.5],
    ['1:02', 62],
    ['0:01:02', 62],
    ['1:02:03', 3723],
  ])('%s is %d s', (text, seconds) => expect(readSeconds(text)).toBe(seconds))

  it.each(['', 'soon', '-1', '1:2', '1:75', '1e3', '12s'])('"%s" is no time', (text) =>
    expect(readSeconds(text)).toBeNull(),
  )
})

describe('readMoment', () => {
  it('makes a moment that the contract accepts', () => {
    const text = typed()
    const reading = readMoment(text)
    expect(reading).toEqual({
      ok: true,
      moment: { id: text.id, link: 'https://video.example/clip', start: 12.4, end: 15 },
    })
    expect(reading.ok && momentSchema.safeParse(reading.moment).success).toBe(true)
  })

  it('plays from the start and to the end when the times are empty', () => {
    expect(readMoment(typed({ start: '', end: ' ' }))).toMatchObject({ moment: { start: 0, end: null } })
  })

  it('reads the times of a link that was typed to its end', () => {
    expect(readMoment(typed({ link: 'https://video.example/clip#t=3,4.5', start: '', end: '' }))).toMatchObject({
      moment: { link: 'https://video.example/clip', start: 3, end: 4.5 },
    })
  })

  it('puts each error at its field', () => {
    expect(errorsOf({ link: '' })).toEqual({ link: 'Paste the link of the video.' })
    expect(errorsOf({ link: 'clip.mp4' }).link).toContain('not a web address')
    expect(errorsOf({ link: 'javascript:alert(1)' }).link).toContain('not a web address')
    expect(errorsOf({ link: `https://video.example/${'x'.repeat(2000)}` }).link).toContain('2,000')
    expect(errorsOf({ start: 'soon' })).toEqual({ start: expect.stringContaining('in seconds') })
    expect(errorsOf({ end: 'late', link: 'x' })).toEqual({
      end: expect.stringContaining('in seconds'),
      link: expect.stringContaining('not a web address'),
    })
  })

  it('refuses a moment that ends before it begins, or when it begins', () => {
    expect(errorsOf({ start: '15', end: '12.4' })).toEqual({
      end: 'The moment ends before it begins: its end must be later than 15.',
    })
    expect(errorsOf({ start: '15', end: '15' }).end).toContain('ends before it begins')
    expect(errorsOf({ start: '', end: '0' }).end).toContain('later than 0')
  })

  it('refuses a time code typed as seconds, and what is no millisecond long', () => {
    const late = expect.stringContaining('more than 24 hours')
    expect(errorsOf({ start: '18150233', end: '' })).toEqual({ start: late })
    expect(errorsOf({ end: '18150233' })).toEqual({ end: late })
    expect(errorsOf({ link: 'https://video.example/clip#t=18150233', start: '', end: '' })).toEqual({ start: late })
    expect(errorsOf({ start: '86400', end: '' })).toEqual({})
    expect(errorsOf({ start: '12.0001', end: '12.0004' })).toEqual({
      end: 'The moment is shorter than a thousandth of a second: its end must be later than 12.0001.',
    })
    expect(errorsOf({ start: '12.0001', end: '12.0009' })).toEqual({})
  })
})

describe('withLink', () => {
  it('takes the time range out of a pasted link', () => {
    const empty = typed({ link: '', start: '', end: '' })
    expect(withLink(empty, 'https://video.example/clip#t=12.4,15')).toMatchObject({
      link: 'https://video.example/clip',
      start: '12.4',
      end: '15',
    })
    expect(withLink(empty, 'https://video.example/clip#t=01:02')).toMatchObject({ start: '62', end: '' })
  })

  it('leaves times that were typed, and what is not yet a link', () => {
    expect(withLink(typed({ end: '' }), 'https://video.example/clip#t=1,2')).toMatchObject({ start: '12.4', end: '' })
    expect(withLink(typed({ link: '', start: '', end: '' }), 'https://video.ex')).toMatchObject({
      link: 'https://video.ex',
      start: '',
    })
  })
})
