import { describe, expect, it } from 'vitest'
import { momentSchema } from './deck/contract'
import {
  formatTemporalFragment,
  isMediaFile,
  momentUrl,
  ownFilm,
  parseTemporalFragment,
  splitMomentLink,
} from './moment'

const video = 'https://video.example/monday.mp4'

describe('parseTemporalFragment', () => {
  it('takes a fragment that is no UTF-8, or a time beyond numbers, as none', () => {
    expect(parseTemporalFragment('t=%FF&t=3')).toEqual({ start: 3, end: null })
    expect(parseTemporalFragment('t=3&t=%E0%A4%A')).toEqual({ start: 3, end: null })
    expect(parseTemporalFragment(`t=${'9'.repeat(400)}`)).toBeNull()
    expect(parseTemporalFragment('')).toBeNull()
  })
})

describe('formatTemporalFragment', () => {
  it.each([
    [{ start: 12.4, end: 15 }, 't=12.400,15.000'],
    [{ start: 0, end: null }, 't=0.000'],
    [{ start: 3725.0625, end: 3726.4999 }, 't=3725.063,3726.500'],
  ])('writes seconds to the millisecond', (range, text) => {
    expect(formatTemporalFragment(range)).toBe(text)
  })

  it.each([
    [
      { start: 15, end: 12.4 },
      'the moment ends before it begins: its end (12.4 s) must be later than its start (15 s)',
    ],
    [{ start: 3, end: 3 }, 'the moment ends before it begins'],
    [{ start: 3.0001, end: 3.0002 }, 'the moment ends before it begins'],
    [{ start: 3, end: Number.POSITIVE_INFINITY }, 'the moment ends before it begins'],
    [{ start: -1, end: 3 }, 'a moment begins at 0 s or later, not at -1 s'],
    [{ start: Number.NaN, end: null }, 'a moment begins at 0 s or later'],
    [{ start: 1e21, end: null }, 'a moment begins at 0 s or later'],
  ])('refuses %o', (range, message) => {
    expect(() => formatTemporalFragment(range)).toThrow(message)
  })
})

describe('splitMomentLink', () => {
  it.each([
    [video, video, null],
    [`${video}#t=12.4,15`, video, { start: 12.4, end: 15 }],
    [`${video}#t=,15`, video, { start: 0, end: 15 }],
    [`${video}#&t=3&&lane=2&`, `${video}#lane=2`, { start: 3, end: null }],
    [`${video}?t=90#lane=2&%74=12&view&t=banana`, `${video}?t=90#lane=2&view`, { start: 12, end: null }],
  ])('%s', (url, link, range) => {
    expect(splitMomentLink(url)).toEqual({ link, range })
  })

  it.each(['#t=15,12', '#/watch/t=3', '#', '#T=3'])('leaves a link without a range as it was: %s', (fragment) => {
    expect(splitMomentLink(video + fragment)).toEqual({ link: video + fragment, range: null })
  })
})

describe('momentUrl', () => {
  it('adds the range, beside what the fragment holds, in the place of an earlier one', () => {
    const range = { start: 12.4, end: 15 }
    expect(momentUrl(video, range)).toBe(`${video}#t=12.400,15.000`)
    expect(momentUrl(`${video}#t=3&lane=2`, range)).toBe(`${video}#lane=2&t=12.400,15.000`)
    expect(momentUrl(video, null)).toBe(video)
  })

  it('wins over an invalid range that the link keeps', () => {
    const url = momentUrl(`${video}#t=15,12`, { start: 3, end: null })
    expect(splitMomentLink(url)).toEqual({ link: video, range: { start: 3, end: null } })
  })
})

describe('isMediaFile', () => {
  it.each([
    [video, true],
    ['https://video.example/a.MOV?key=1#t=3', true],
    ['/media/clips/101b-sound.webm', true],
    ['http://video.example/monday.mp4', false],
    ['https://video.example/watch?v=monday.mp4', false],
    ['/media/../api/secret.webm', false],
    ['//video.example/a.webm', false],
    ['javascript:alert(1)//a.mp4', false],
    ['', false],
  ])('%s: %s', (link, file) => {
    expect(isMediaFile(link)).toBe(file)
  })

  it.each([
    [video, true],
    ['http://video.example/watch', true],
    ['/media/clips/101b-sound.webm', true],
    ['/media/../api/secret.webm', false],
    ['/etc/passwd', false],
    ['javascript:alert(1)', false],
    [`https://video.example/${'a'.repeat(2000)}`, false],
  ])('may be sent from the deck: %s: %s', (link, ok) => {
    const moment = { id: '01890a5d-ac96-774b-bcce-b302099a8057', link, start: 0, end: null }
    expect(momentSchema.safeParse(moment).success).toBe(ok)
  })

  it('knows only paths below the media of this server as its own', () => {
    expect(ownFilm.test('/media/clips/201a-arched.webm')).toBe(true)
    expect(ownFilm.test('https://video.example/media/clips/201a-arched.webm')).toBe(false)
  })
})
