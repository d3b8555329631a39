import { v7 as uuidv7 } from 'uuid'
import { afterAll, beforeEach, describe, expect, it } from 'vitest'
import type { OnFrames } from '../../lib/assessment/measure/taken'
import { tallyChecks } from '../../lib/assessment/moment-check'
import { isAnswered, standingQuestions } from '../../lib/assessment/question'
import { answerQuestion, checkMoment } from '../../lib/assessment/store/check-moment'
import { listComparable } from '../../lib/assessment/store/comparable'
import { nameExemplar, readNamed } from '../../lib/assessment/store/exemplars'
import { linkFilmed } from '../../lib/assessment/store/link-filmed'
import { keepMark } from '../../lib/assessment/store/marks'
import { keepMeasure, takeBackMeasure } from '../../lib/assessment/store/measures'
import { findMoment } from '../../lib/assessment/store/moments'
import { readOwnWork } from '../../lib/assessment/store/own-work'
import { readDiver } from '../../lib/assessment/store/reads'
import { recordConsent } from '../../lib/assessment/store/record-consent'
import { readLooks } from '../../lib/assessment/store/second-look'
import type { Rating } from '../../lib/curriculum/model'
import { closeDatabase } from '../../lib/platform/db'
import { answerOf, type Filmed, film, idOf } from '../support/filmed'
import { filmedAttempt } from '../support/moment-rows'
import {
  coachAs,
  dayLength,
  makeCoast,
  minute,
  noon,
  type PersonKey,
  ratedAttempt,
  type SmallCoast,
  sendAs,
} from '../support/small-club'

// A correction takes its moments along under new ids: what was marked, measured and asked in the earlier copy stays theirs.
let coast: SmallCoast
let filmed: Filmed
let clock: number
type Ratings = Record<string, Rating>
const stretch = { link: '/media/clips/101b-sound.webm', start: 0.5, end: 1.5 }

beforeEach(async () => {
  coast = await makeCoast()
  filmed = await film(coast, noon)
  clock = noon + 10 * minute
})
afterAll(closeDatabase)

const scopeOf = async (who: PersonKey) => {
  clock += minute
  return coachAs(coast, who, clock)
}
/** The assistant corrects what she rated last, with these stretches of film; the ids of its moments. */
async function correct(
  of: Filmed = filmed,
  stretches: readonly object[] = [stretch],
  ratings: Ratings = { 'clear-water': 1 },
) {
  clock += minute
  const moments = stretches.map((one) => ({ ...one, id: uuidv7({ msecs: clock }) }))
  const item = { ...answerOf(coast, of, clock, ratings), moments }
  const [done] = await sendAs(coast, 'assistant', clock, [item])
  expect(done?.message ?? done?.result).toBe('accepted')
  return { observation: item.id, moments: moments.map(({ id }) => id) }
}
const check = async (moment: string, kind: 'accepted' | 'questioned' | 'withdrawn', who: PersonKey = 'head') =>
  checkMoment(await scopeOf(who), { moment, kind, words: 'Hands apart?' })
async function desk() {
  const read = await readDiver(await scopeOf('head'), coast.divers.here)
  if (!read) throw new Error('she is of the club')
  return read
}
async function standing() {
  const { questions, file } = await desk()
  return standingQuestions(questions, file.record.attempts)
}
const tally = async (moment: string) => tallyChecks((await desk()).questions.checks, [moment], coast.people.head)
const shown = async () => (await desk()).moments.map(({ id }) => id)
const consent = async (given: boolean) =>
  recordConsent(await scopeOf('head'), {
    diver: coast.divers.here,
    purpose: 'video',
    given,
    saidBy: 'Her mother',
  })

describe('what is shown of an attempt', () => {
  it('is a stretch of film once, as the correction has it, and none that it took out', async () => {
    const { moments } = await correct(filmed, [stretch, { ...stretch, start: 0, end: 0.4 }])
    expect(await shown()).toEqual([...moments].sort())
    const head = await scopeOf('head')
    const comparable = await listComparable(head, 'tread')
    expect(comparable.map(({ id, ratings }) => [id, ratings]).sort()).toEqual(moments.map((id) => [id, [1]]).sort())
    expect(comparable.find(({ copies }) => copies.includes(filmed.moment))?.id).toBe(moments[0])
    expect((await findMoment(head, filmed.moment))?.copies).toEqual([filmed.moment, moments[0]])
  })

  it('is nothing where the correction took the film out: neither in a list nor for who looks blind', async () => {
    const looks = async () => (await readLooks(await coachAs(coast, 'secondHead', noon + dayLength))).looks
    // A dive whose standard wants a second coach.
    const wrong = await filmedAttempt(coast, noon + 3 * minute, 'https://clips.example/of-another.mp4')
    expect((await looks()).flatMap(({ moments }) => moments)).toEqual([
      'https://clips.example/of-another.mp4#t=0.300,2.600',
    ])
    const found = (await desk()).moments.find(({ id }) => id === wrong)
    if (!found) throw new Error('it is shown')
    await correct({ ...found, moment: wrong }, [{ ...stretch, link: 'https://clips.example/hers.mp4' }], {
      'hands-locked': 3,
    })
    expect((await looks()).flatMap(({ moments }) => moments)).toEqual(['https://clips.example/hers.mp4#t=0.500,1.500'])
    expect(await shown()).not.toContain(wrong)
    expect((await listComparable(await scopeOf('head'), '101C')).map(({ id }) => id)).not.toContain(wrong)
  })

  it('is a clip that was linked later also after a correction that did not know of it, with what is rated now', async () => {
    const dive = { diver: coast.divers.here, skill: 'tread', place: 'poolside', at: noon + minute } as const
    const items = ratedAttempt(coast, { ...dive, ratings: { 'clear-water': 4 } }).map((item) =>
      item.kind === 'attempt' ? { ...item, filmed: { clip: 3, at: noon } } : item,
    )
    await sendAs(coast, 'assistant', noon + 3 * minute, items)
    const attempt = items[1]?.id ?? ''
    const linked = await linkFilmed(await scopeOf('assistant'), [{ attempt, ...stretch }])
    expect(linked.ok).toBe(true)
    const before = (await shown()).filter((id) => id !== filmed.moment)
    expect(before).toHaveLength(1)
    await correct({ attempt, observation: items[2]?.id ?? '', moment: '' }, [])
    expect(await shown()).toEqual(expect.arrayContaining(before))
    const comparable = await listComparable(await scopeOf('head'), 'tread')
    expect(comparable.find(({ id }) => id === before[0])?.ratings).toEqual([1])
  })
})

describe('what was worked out in the film', () => {
  const hip: OnFrames = {
    kind: 'hip',
    frames: [{ atMs: 1400, frameUs: 16_667, width: 720, height: 540 }],
    points: { shoulder: { x: 400, y: 200 }, hip: { x: 360, y: 160 }, ankle: { x: 350, y: 250 } },
    upright: 'picture',
    down: false,
    metres: null,
    pixel: 2,
  }
  const mark = async (moment: string, atMs: number | null) =>
    idOf(await keepMark(await scopeOf('assistant'), { moment, key: 'movement', atMs, frameUs: 16_667 }))
  const found = async (id: string) => findMoment(await scopeOf('assistant'), id)

  it('goes on standing in the copy, is marked over there, and taken back there', async () => {
    await mark(filmed.moment, 700)
    const measure = idOf(await keepMeasure(await scopeOf('assistant'), { moment: filmed.moment, taken: hip }))
    const copy = (await correct()).moments[0] ?? ''
    expect((await found(copy))?.marks).toMatchObject([{ atMs: 700 }])
    expect((await found(copy))?.measures).toMatchObject([{ id: measure }])
    const own = await readOwnWork(await scopeOf('assistant'), filmed.attempt)
    expect(own).toMatchObject([{ moment: copy, marks: [{ atMs: 700 }], measures: [{ id: measure }] }])
    await mark(copy, 750)
    for (const id of [filmed.moment, copy]) expect((await found(id))?.marks).toMatchObject([{ atMs: 750 }])
    await mark(copy, null)
    expect((await found(copy))?.marks).toEqual([])
    expect(await takeBackMeasure(await scopeOf('assistant'), { moment: copy, measure })).toMatchObject({ ok: true })
    expect((await found(copy))?.measures).toEqual([])
  })

  it('stays with its own stretch of film: another range begins with nothing', async () => {
    await mark(filmed.moment, 700)
    const other = (await correct(filmed, [{ ...stretch, end: 1.4 }])).moments[0] ?? ''
    expect((await found(other))?.marks).toEqual([])
    expect((await found(filmed.moment))?.marks).toHaveLength(1)
  })
})

describe('a question that was answered by a correction', () => {
  it('stands on the copy, where accepting ends it; her tally does not fall', async () => {
    const question = idOf(await check(filmed.moment, 'questioned'))
    const copy = (await correct()).moments[0] ?? ''
    expect(await tally(copy)).toMatchObject({ accepted: 0, questioned: 1 })
    const [asked] = await standing()
    expect(asked).toMatchObject({ asked: { id: question, moment: copy } })
    expect(asked && isAnswered(asked)).toBe(true)
    expect(await answerQuestion(await scopeOf('assistant'), { question, words: 'Apart, yes.' })).toMatchObject({
      ok: true,
    })
    expect(await check(copy, 'accepted', 'secondHead')).toMatchObject({ ok: true })
    expect(await standing()).toHaveLength(1)
    expect(await check(copy, 'accepted')).toMatchObject({ ok: true })
    expect(await standing()).toEqual([])
    expect(await tally(copy)).toMatchObject({ accepted: 1, questioned: 0 })
    // It stays ended while the film is hidden and nobody can tell that the two are one.
    await consent(false)
    expect(await standing()).toEqual([])
  })

  it('is taken back on the copy, and asked anew there; an accepted moment stays accepted', async () => {
    idOf(await check(filmed.moment, 'accepted'))
    const copy = (await correct()).moments[0] ?? ''
    expect(await tally(copy)).toMatchObject({ accepted: 1 })
    const [first, second] = [await check(filmed.moment, 'questioned'), await correctAgain()]
    expect(await check(second, 'withdrawn')).toMatchObject({ ok: true })
    expect(await standing()).toEqual([])
    expect(await check(second, 'withdrawn')).toMatchObject({ refusal: { code: 'not asked' } })
    const anew = idOf(await check(second, 'questioned'))
    expect((await standing()).map(({ asked }) => asked.id)).toEqual([anew])
    expect((await standing()).map(isAnswered)).toEqual([false])
    expect(idOf(first)).not.toBe(anew)
  })

  /** The correction of the correction. */
  async function correctAgain(): Promise<string> {
    const { file } = await desk()
    const seen = file.record.attempts.find(({ id }) => id === filmed.attempt)?.observations ?? []
    const observation = seen.find(({ id }) => !seen.some(({ supersedes }) => supersedes === id))?.id ?? ''
    return (await correct({ ...filmed, observation }, [stretch], { 'clear-water': 2 })).moments[0] ?? ''
  }
})

it('an exemplar stays what it was named as: the copy’s page shows it, and it is not named twice', async () => {
  const said = { diver: coast.divers.here, purpose: 'exemplar', given: true, saidBy: 'Her mother' } as const
  await recordConsent(await scopeOf('head'), { ...said, reach: 'club' })
  const shows = { kind: 'criterion', criterion: 'clear-water', level: 'one' } as const
  const exemplar = idOf(await nameExemplar(await scopeOf('head'), { moment: filmed.moment, shows }))
  const copy = (await correct()).moments[0] ?? ''
  const { named } = await readNamed(await scopeOf('head'), copy, coast.divers.here)
  expect(named.map(({ id }) => id)).toEqual([exemplar])
  expect(await nameExemplar(await scopeOf('head'), { moment: copy, shows })).toMatchObject({
    refusal: { code: 'named before' },
  })
})
