import { describe, expect, it } from 'vitest'
import { isUnreachable, type MomentCheck, tallyChecks, verdictOf } from './moment-check'
import { type AnsweredHow, judgeSayings, type Question, standingQuestions } from './question'
import { sayMoments, sayStanding, sayTally } from './readiness/say-question'

const check = (id: string, kind: MomentCheck['kind'], by = 'hana', at = Number(id)): MomentCheck => ({
  ...{ id, kind, by, at },
  ...{ moment: 'm', observation: 'o', attempt: 'a' },
})
const standing = (checks: readonly MomentCheck[], said: { question: string; how: AnsweredHow }[] = []) => {
  const all = { checks, answers: [], said: said.map((one) => ({ ...one, decision: 'd' })) }
  return standingQuestions(all, []).map(({ asked }) => asked.id)
}

describe('what stands of a moment', () => {
  it('is the last word of each head coach, whatever order rows come in', () => {
    const checks = [check('3', 'withdrawn'), check('1', 'accepted'), check('2', 'questioned')]
    expect(verdictOf(checks, 'm', 'hana')).toBeNull()
    expect(verdictOf(checks.slice(1), 'm', 'hana')?.id).toBe('2')
    expect(verdictOf(checks, 'm', 'ines')).toBeNull()
  })

  it('is not changed by a film that does not open, nor is a film reachable because a question was taken back', () => {
    const lost = [check('1', 'questioned'), check('2', 'not reachable')]
    expect(verdictOf(lost, 'm', 'hana')?.id).toBe('1')
    expect(isUnreachable([...lost, check('3', 'withdrawn')], 'm')).toBe(true)
    expect(isUnreachable([...lost, check('3', 'accepted', 'ines')], 'm')).toBe(false)
    expect(tallyChecks(lost, ['m', 'n'], 'hana')).toEqual({ moments: 2, accepted: 0, questioned: 1, unreachable: 1 })
  })
})

describe('a question', () => {
  it('stands until it is taken back, replaced, accepted, or said to be settled; left open it stands on', () => {
    const asked = [check('1', 'questioned'), check('2', 'questioned', 'ines')]
    expect(standing(asked)).toEqual(['1', '2'])
    for (const kind of ['withdrawn', 'accepted'] as const) expect(standing([...asked, check('3', kind)])).toEqual(['2'])
    expect(standing([...asked, check('3', 'questioned')])).toEqual(['2', '3'])
    expect(standing(asked, [{ question: '1', how: 'settled' }])).toEqual(['2'])
    expect(standing(asked, [{ question: '1', how: 'left open' }])).toEqual(['1', '2'])
  })

  it('never stops a decision: one of the things that may be said of it always can be', () => {
    const question: Question = { asked: check('1', 'questioned'), answers: [], correction: null }
    const judge = (how: 'answered' | 'settled' | 'left open' | null, reason = '', on = question) =>
      judgeSayings([on], [{ question: '1', how, reason }])
    expect(judgeSayings([question], [])).toMatchObject({ ok: false, refusal: { field: 'how:1' } })
    expect(judge('answered')).toMatchObject({ ok: false, refusal: { code: 'not answered' } })
    expect(judge('answered', '', { ...question, correction: 'c' })).toMatchObject({ ok: true })
    expect(judge('settled', 'not kept')).toMatchObject({ ok: true, questions: [{ how: 'settled', reason: null }] })
    expect(judge('left open')).toMatchObject({ ok: false, refusal: { field: 'why:1' } })
    expect(judge('left open', ' Later. ')).toMatchObject({ ok: true, questions: [{ reason: 'Later.' }] })
  })
})

describe('what is said', () => {
  const tally = { moments: 7, accepted: 0, questioned: 0, unreachable: 0 }
  it.each([
    [{}, '7 moments', null],
    [
      { unreachable: 2 },
      '7 moments, 2 not reachable',
      'Of 7 moments you judged none yet; 2 were not reachable when looked at.',
    ],
    [
      { accepted: 5, questioned: 1, unreachable: 1 },
      '7 moments, 1 not reachable',
      'Of 7 moments you accepted 5 and questioned 1; 1 was not reachable when looked at.',
    ],
    [{ moments: 1, accepted: 1 }, '1 moment', 'Of 1 moment you accepted 1.'],
  ])('of %j', (changes, moments, sentence) => {
    expect(sayMoments({ ...tally, ...changes })).toBe(moments)
    expect(sayTally({ ...tally, ...changes })).toBe(sentence)
  })

  it.each([
    [0, 0, null],
    [0, 1, 'One question about its evidence stands open.'],
    [0, 2, 'Two questions about its evidence stand open.'],
    [1, 0, 'One question about its evidence is answered.'],
    [2, 1, 'One question about its evidence stands open, two are answered.'],
  ])('of %i answered and %i open', (answered, open, sentence) => {
    expect(sayStanding(answered, open)).toBe(sentence)
  })
})
