import { v7 as uuidv7 } from 'uuid'
import { afterAll, beforeEach, describe, expect, it } from 'vitest'
import { tallyChecks } from '../../lib/assessment/moment-check'
import { isAnswered, standingQuestions } from '../../lib/assessment/question'
import { answerQuestion, checkMoment } from '../../lib/assessment/store/check-moment'
import { readDiver } from '../../lib/assessment/store/reads'
import { recordConsent } from '../../lib/assessment/store/record-consent'
import { closeDatabase } from '../../lib/platform/db'
import { asRole } from '../support/database'
import { answerOf, type Filmed, film, idOf } from '../support/filmed'
import { coachAs, makeCoast, minute, noon, type PersonKey, type SmallCoast, sendAs } from '../support/small-club'

// Questions about moments: who asks, who answers, what stands, and what becomes of them when the record goes on.
let coast: SmallCoast
let filmed: Filmed
const later = noon + 60 * minute

beforeEach(async () => {
  coast = await makeCoast()
  filmed = await film(coast, noon)
})
afterAll(closeDatabase)

const check = async (
  kind: 'accepted' | 'questioned' | 'withdrawn' | 'not reachable',
  { who = 'head', at = later, words = 'Hands apart?' }: { who?: PersonKey; at?: number; words?: string } = {},
) => checkMoment(await coachAs(coast, who, at), { moment: filmed.moment, kind, words })
const answer = async (
  question: string,
  words: string,
  { who = 'assistant', at = later + minute }: { who?: PersonKey; at?: number } = {},
) => answerQuestion(await coachAs(coast, who, at), { question, words })
const desk = async (who: PersonKey = 'head', at = later + 30 * minute) =>
  readDiver(await coachAs(coast, who, at), coast.divers.here)
const standing = async (who: PersonKey = 'head') => {
  const read = await desk(who)
  return read ? standingQuestions(read.questions, read.file.record.attempts) : null
}

describe('what a head coach makes of a moment', () => {
  it('is hers to say, in words where it is a question; nobody else’s', async () => {
    expect(await check('accepted', { who: 'assistant' })).toMatchObject({ refusal: { code: 'not the head coach' } })
    for (const who of ['elsewhere', 'lead', 'reviewer'] as const)
      expect(await check('accepted', { who })).toMatchObject({ refusal: { code: 'not found' } })
    expect(await check('questioned', { words: '  ' })).toMatchObject({ refusal: { code: 'no words', field: 'words' } })
    expect(await check('withdrawn')).toMatchObject({ refusal: { code: 'not found' } })
    expect(await check('questioned')).toMatchObject({ ok: true })
    expect((await desk())?.questions.texts.get((await standing())?.[0]?.asked.id ?? '')).toBe('Hands apart?')
  })

  it('is her last word on it: a later one replaces it, and what is pressed twice is kept once', async () => {
    const accepted = idOf(await check('accepted'))
    expect(idOf(await check('accepted', { at: later + minute }))).toBe(accepted)
    const first = idOf(await check('questioned', { at: later + 2 * minute }))
    const second = idOf(await check('questioned', { at: later + 3 * minute, words: 'Or late?' }))
    expect((await standing())?.map(({ asked }) => asked.id)).toEqual([second])
    expect(await answer(first, 'No.', { at: later + 4 * minute })).toMatchObject({ refusal: { code: 'not asked' } })
    expect(idOf(await check('withdrawn', { at: later + 5 * minute }))).not.toBe(second)
    expect(await standing()).toEqual([])
    expect(await check('withdrawn', { at: later + 6 * minute })).toMatchObject({ refusal: { code: 'not asked' } })
    const checks = (await desk())?.questions.checks ?? []
    expect(checks.map(({ kind }) => kind).sort()).toEqual(['accepted', 'questioned', 'questioned', 'withdrawn'])
  })

  it('is each head coach’s own: one takes back nothing of the other’s', async () => {
    await check('questioned')
    await check('accepted', { who: 'secondHead', at: later + minute })
    expect(await standing()).toHaveLength(1)
    expect(await check('withdrawn', { who: 'secondHead', at: later + 2 * minute })).toMatchObject({
      refusal: { code: 'not asked' },
    })
    const checks = (await desk())?.questions.checks ?? []
    const tally = (who: PersonKey) => tallyChecks(checks, [filmed.moment], coast.people[who])
    expect(tally('head')).toEqual({ moments: 1, accepted: 0, questioned: 1, unreachable: 0 })
    expect(tally('secondHead')).toEqual({ moments: 1, accepted: 1, questioned: 0, unreachable: 0 })
  })

  it('does not change when a film does not open, which is said beside it until somebody sees it again', async () => {
    await check('questioned')
    await check('not reachable', { at: later + minute })
    await check('not reachable', { at: later + 2 * minute })
    const read = async () => {
      const checks = (await desk())?.questions.checks ?? []
      return { rows: checks.length, ...tallyChecks(checks, [filmed.moment], coast.people.head) }
    }
    expect(await read()).toEqual({ rows: 2, moments: 1, accepted: 0, questioned: 1, unreachable: 1 })
    expect(await standing()).toHaveLength(1)
    await check('accepted', { at: later + 3 * minute })
    expect(await read()).toEqual({ rows: 3, moments: 1, accepted: 1, questioned: 0, unreachable: 0 })
  })
})

describe('an answer', () => {
  it('is the rating coach’s, in words, and the question stands with it', async () => {
    const question = idOf(await check('questioned'))
    expect(await answer(question, 'I saw it.', { who: 'head' })).toMatchObject({ refusal: { code: 'not the coach' } })
    expect(await answer(question, 'I saw it.', { who: 'elsewhere' })).toMatchObject({ refusal: { code: 'not found' } })
    expect(await answer(question, ' ')).toMatchObject({ refusal: { code: 'no words', field: 'words' } })
    expect((await standing('assistant'))?.map(isAnswered)).toEqual([false])
    expect(await answer(question, 'Locked; the camera is low.')).toMatchObject({ ok: true })
    expect((await standing())?.map(isAnswered)).toEqual([true])
  })

  it('is a correction as well, which is named', async () => {
    await check('questioned')
    const corrected = answerOf(coast, filmed, later + 2 * minute, { 'clear-water': 2 })
    const [done] = await sendAs(coast, 'assistant', later + 3 * minute, [corrected])
    expect(done?.result).toBe('accepted')
    expect(await standing()).toMatchObject([{ correction: corrected.id, answers: [] }])
  })
})

describe('when the record goes on', () => {
  const move = () =>
    asRole('owner', async (owner) => {
      const at = new Date(later + 5 * minute)
      await owner.query('UPDATE "DiverMembership" SET "to" = $2 WHERE "diverId" = $1', [coast.divers.here, at])
      const row = [uuidv7(), coast.divers.here, coast.clubs.there, at]
      await owner.query(
        'INSERT INTO "DiverMembership" ("id", "diverId", "clubId", "from") VALUES ($1, $2, $3, $4)',
        row,
      )
    })

  it('a question goes with the diver to her next club, whose head coach reads it; the old coach answers no more', async () => {
    const question = idOf(await check('questioned'))
    await move()
    expect(await desk('head')).toBeNull()
    expect(await answer(question, 'I saw it.', { at: later + 6 * minute })).toMatchObject({ ok: false })
    const there = await desk('elsewhere')
    expect(there && standingQuestions(there.questions, there.file.record.attempts)).toMatchObject([
      { asked: { id: question } },
    ])
    expect(there?.questions.texts.get(question)).toBe('Hands apart?')
    expect(await check('withdrawn', { who: 'elsewhere', at: later + 7 * minute })).toMatchObject({
      refusal: { code: 'not asked' },
    })
  })

  it('without consent to video nothing more is said of the film, and what was asked stays, is answered and taken back', async () => {
    const question = idOf(await check('questioned'))
    const withdrawn = { diver: coast.divers.here, purpose: 'video', given: false, saidBy: 'Her mother' } as const
    await recordConsent(await coachAs(coast, 'head', later + minute), withdrawn)
    for (const kind of ['accepted', 'questioned', 'not reachable'] as const)
      expect(await check(kind, { at: later + 2 * minute })).toMatchObject({ refusal: { code: 'not found' } })
    const hidden = await desk()
    expect([hidden?.moments, hidden?.questions.texts.get(question)]).toEqual([[], 'Hands apart?'])
    expect(await answer(question, 'Locked.', { at: later + 3 * minute })).toMatchObject({ ok: true })
    expect(await check('withdrawn', { at: later + 4 * minute })).toMatchObject({ ok: true })
    expect(await standing()).toEqual([])
  })

  it('erased words leave a question that says nothing', async () => {
    const question = idOf(await check('questioned'))
    await asRole('owner', (owner) =>
      owner.query(`UPDATE "Words" SET "text" = NULL, "salt" = NULL, "erasedAt" = now() WHERE "diverId" = $1`, [
        coast.divers.here,
      ]),
    )
    const read = await desk()
    expect(read?.questions.texts.get(question)).toBeUndefined()
    expect(read?.questions.commitments.get(question)).toMatch(/^[0-9a-f]{64}$/)
    expect(await standing()).toHaveLength(1)
  })
})
