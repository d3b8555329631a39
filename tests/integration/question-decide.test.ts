import fc from 'fast-check'
import { afterAll, beforeEach, describe, expect, it } from 'vitest'
import { basisOf } from '../../lib/assessment/basis'
import type { QuestionSaying } from '../../lib/assessment/question'
import { standingQuestions } from '../../lib/assessment/question'
import { evaluationOf } from '../../lib/assessment/readiness/evaluation'
import { listTargets, readTarget } from '../../lib/assessment/readiness/targets'
import { answerQuestion, checkMoment } from '../../lib/assessment/store/check-moment'
import { decideTarget } from '../../lib/assessment/store/decide'
import { readDiver } from '../../lib/assessment/store/reads'
import { signSkill } from '../../lib/assessment/store/sign'
import { asOfInstant } from '../../lib/assessment/time'
import { canonicalJson } from '../../lib/curriculum/canonical'
import { sha256Hex } from '../../lib/curriculum/digest'
import { closeDatabase } from '../../lib/platform/db'
import { checkReadinessAsOwner } from '../support/check-readiness'
import { asRole } from '../support/database'
import { answerOf, type Filmed, film, idOf } from '../support/filmed'
import { readReadiness } from '../support/rows'
import {
  coachAs,
  dayLength,
  makeCoast,
  minute,
  noon,
  type PersonKey,
  type SmallCoast,
  sendAs,
} from '../support/small-club'

// What a decision says of the questions that stand about its evidence; and that a question is no rule of evidence.
let coast: SmallCoast
let filmed: readonly Filmed[]
const later = noon + 2 * dayLength

/** The first level, ready on two filmed attempts. */
async function makeReady(): Promise<void> {
  coast = await makeCoast()
  filmed = [await film(coast, noon), await film(coast, noon + 10 * minute)]
  const signing = {
    diver: coast.divers.here,
    pair: 'tread@poolside',
    level: 'one',
    waiver: null,
    reason: null,
  } as const
  idOf(await signSkill(await coachAs(coast, 'assistant', later), signing))
}
beforeEach(makeReady)
afterAll(closeDatabase)

const ask = async (at = later + minute, who: PersonKey = 'head', words = 'Hands apart?') =>
  idOf(await checkMoment(await coachAs(coast, who, at), { moment: filmed[0]?.moment ?? '', kind: 'questioned', words }))
const answer = async (question: string, at: number) =>
  answerQuestion(await coachAs(coast, 'assistant', at), { question, words: 'Locked; the camera is low.' })
const readNow = async (at: number) => {
  const desk = await readDiver(await coachAs(coast, 'head', at), coast.divers.here)
  if (!desk) throw new Error('no diver')
  const evaluation = evaluationOf(desk.curriculum, desk.file.record, asOfInstant(at, desk.file.zone))
  return { evaluation, standing: standingQuestions(desk.questions, desk.file.record.attempts), desk }
}
const basis = async (at: number) => {
  const { evaluation, standing } = await readNow(at)
  return basisOf(evaluation, readTarget(evaluation, 'level:one'), standing)
}
interface Deciding {
  readonly outcome?: 'approve' | 'return'
  readonly questions?: readonly QuestionSaying[]
  readonly basis?: string
  readonly who?: PersonKey
}
const decide = async (at: number, { outcome = 'approve', questions, basis, who = 'head' }: Deciding = {}) =>
  decideTarget(await coachAs(coast, who, at), {
    ...{ diver: coast.divers.here, target: 'level:one', outcome, reason: outcome === 'return' ? 'Once more.' : null },
    ...{ wantsMoreOf: [], diverWants: null, onlyCoach: null, basis: basis ?? null },
    ...(questions ? { questions } : {}),
  })
const say = (question: string, how: QuestionSaying['how'], reason = ''): QuestionSaying => ({ question, how, reason })
const lastEntry = () =>
  asRole('owner', async (owner) => {
    const { rows } = await owner.query<{ kind: string; schemaVersion: number; payload: string; hash: string }>(
      'SELECT "kind", "schemaVersion", "payload", "hash" FROM "Ledger" WHERE "programmeId" = $1 ORDER BY "seq" DESC LIMIT 1',
      [coast.programme],
    )
    const [entry] = rows
    if (!entry) throw new Error('the ledger is empty')
    return entry
  })

describe('a decision over a question that stands', () => {
  it('says what became of it, and any of the answers lets it be taken', async () => {
    const question = await ask()
    const at = later + 5 * minute
    expect(await decide(at)).toMatchObject({ refusal: { code: 'question stands', field: `how:${question}` } })
    expect(await decide(at, { questions: [say(question, null)] })).toMatchObject({
      refusal: { code: 'question stands' },
    })
    expect(await decide(at, { questions: [say(question, 'answered')] })).toMatchObject({
      refusal: { code: 'not answered' },
    })
    expect(await decide(at, { questions: [say(question, 'left open', ' ')] })).toMatchObject({
      refusal: { code: 'no reason', field: `why:${question}` },
    })
    expect(
      await decide(at, { questions: [say(question, 'left open', 'Petra is away; the other two are clear.')] }),
    ).toMatchObject({
      ok: true,
    })
    const { desk, standing } = await readNow(at + minute)
    expect(desk.questions.said).toMatchObject([{ question, how: 'left open' }])
    expect([...desk.questions.reasons.values()]).toEqual(['Petra is away; the other two are clear.'])
    // Left open, it stands for whatever is decided next.
    expect(standing.map(({ asked }) => asked.id)).toEqual([question])
  })

  it('closes it when it was answered or settled', async () => {
    const question = await ask()
    expect(await answer(question, later + 2 * minute)).toMatchObject({ ok: true })
    expect(await decide(later + 5 * minute, { questions: [say(question, 'answered')] })).toMatchObject({ ok: true })
    expect((await readNow(later + 6 * minute)).standing).toEqual([])
  })

  it('asks for the other head coach’s question too, and leaves a return free', async () => {
    const question = await ask(later + minute, 'secondHead')
    expect(await decide(later + 2 * minute)).toMatchObject({ refusal: { code: 'question stands' } })
    expect(await decide(later + 3 * minute, { outcome: 'return' })).toMatchObject({ ok: true })
    const { desk, standing } = await readNow(later + 4 * minute)
    expect([desk.questions.said, standing.map(({ asked }) => asked.id)]).toEqual([[], [question]])
    expect(JSON.parse((await lastEntry()).payload)).toMatchObject({ outcome: 'return', questions: [] })
  })

  it('is no matter of a question that was taken back, or about what it does not rest on', async () => {
    await ask()
    const moment = filmed[0]?.moment ?? ''
    idOf(await checkMoment(await coachAs(coast, 'head', later + 2 * minute), { moment, kind: 'accepted', words: '' }))
    const apart = await film(coast, later + 3 * minute)
    const about = { moment: apart.moment, kind: 'questioned', words: 'And here?' } as const
    idOf(await checkMoment(await coachAs(coast, 'head', later + 10 * minute), about))
    expect(await decide(later + 11 * minute)).toMatchObject({ ok: true })
  })

  it('is in the ledger with ids and commitments, in the second shape of a decision, and without a word', async () => {
    const question = await ask()
    await answer(question, later + 2 * minute)
    await decide(later + 5 * minute, { questions: [say(question, 'settled', 'is dropped where it is not left open')] })
    const entry = await lastEntry()
    const payload = JSON.parse(entry.payload)
    expect([entry.kind, entry.schemaVersion, payload.schemaVersion]).toEqual(['decided', 2, 2])
    expect([canonicalJson(payload), sha256Hex(entry.payload)]).toEqual([entry.payload, entry.hash])
    const commitment = expect.stringMatching(/^[0-9a-f]{64}$/)
    expect(payload.questions).toEqual([
      {
        ...{ question, observation: filmed[0]?.observation, by: coast.people.head, how: 'settled' },
        ...{ asked: commitment, answers: [commitment], correction: null, reason: null },
      },
    ])
    for (const word of ['Hands', 'Locked', 'dropped']) expect(entry.payload).not.toContain(word)
  })

  it('keeps other entries in their first shape', async () => {
    expect(await lastEntry()).toMatchObject({ kind: 'signed off', schemaVersion: 1 })
  })
})

describe('a page that was opened before', () => {
  it('is stale after a question, an answer, a correction and a question taken back', async () => {
    let at = later
    const changes = async (change: (at: number) => Promise<unknown>) => {
      at += 10 * minute
      const before = await basis(at)
      await change(at + minute)
      expect(await basis(at + 5 * minute)).not.toBe(before)
      return before
    }
    let question = ''
    const first = await changes(async (when) => {
      question = await ask(when)
    })
    expect(await decide(at + 6 * minute, { basis: first })).toMatchObject({ refusal: { code: 'changed' } })
    const second = await changes((when) => answer(question, when))
    const questions = [say(question, 'answered')]
    expect(await decide(at + 6 * minute, { basis: second, questions })).toMatchObject({ refusal: { code: 'changed' } })
    const [one] = filmed
    await changes((when) => sendAs(coast, 'assistant', when, [one && answerOf(coast, one, when, { 'clear-water': 4 })]))
    const moment = one?.moment ?? ''
    await changes(async (when) =>
      checkMoment(await coachAs(coast, 'head', when), { moment, kind: 'withdrawn', words: '' }),
    )
    expect(await decide(at + 6 * minute, { basis: await basis(at + 6 * minute) })).toMatchObject({ ok: true })
  })

  it('is not stale when a moment was accepted, or did not open', async () => {
    const before = await basis(later)
    for (const kind of ['not reachable', 'accepted'] as const)
      idOf(
        await checkMoment(await coachAs(coast, 'head', later + minute), {
          moment: filmed[0]?.moment ?? '',
          kind,
          words: '',
        }),
      )
    expect(await basis(later + 2 * minute)).toBe(before)
  })

  it('a question at the very moment of a decision is either said in it, or comes after it', async () => {
    const seen = await basis(later)
    const [question, outcome] = await Promise.all([
      ask(later + minute, 'secondHead'),
      decide(later + minute, { basis: seen }),
    ])
    const { desk, standing } = await readNow(later + 2 * minute)
    expect(standing.map(({ asked }) => asked.id)).toEqual([question])
    expect(desk.questions.said).toEqual([])
    // Taken before the question came: then it rests on what was seen. Else it was refused as stale.
    if (!outcome.ok) expect(outcome.refusal.code).toBe('changed')
  })
})

describe('law', () => {
  const acts = fc.array(
    fc.record({
      kind: fc.constantFrom('accepted', 'questioned', 'withdrawn', 'not reachable', 'answer'),
      moment: fc.nat({ max: 1 }),
      who: fc.constantFrom('head', 'secondHead'),
    } as const),
    { minLength: 1, maxLength: 8 },
  )

  it('whatever is asked, answered, accepted or taken back, no status and no readiness changes', {
    timeout: 120_000,
  }, async () => {
    let kept = 0
    const run = async (told: typeof acts extends fc.Arbitrary<infer Acts> ? Acts : never) => {
      await makeReady()
      const end = later + 60 * minute
      const standsAt = async () => {
        const { evaluation } = await readNow(end)
        const rows = await readReadiness(await coachAs(coast, 'head', end))
        const sorted = [...rows].sort((a, b) => a.target.localeCompare(b.target, 'en'))
        return {
          found: listTargets(evaluation.curriculum).map((target) => readTarget(evaluation, target)),
          rows: sorted,
        }
      }
      const before = await standsAt()
      for (const [index, { kind, moment: which, who }] of told.entries()) {
        const at = later + (index + 1) * minute
        const moment = filmed[which]?.moment ?? ''
        const asked = (await readNow(at)).standing.find((one) => one.asked.moment === moment)?.asked.id
        const done =
          kind === 'answer'
            ? await answer(asked ?? moment, at)
            : await checkMoment(await coachAs(coast, who, at), { moment, kind, words: 'Hands apart?' })
        if (done.ok) kept++
      }
      expect(await standsAt()).toEqual(before)
      expect((await checkReadinessAsOwner(coast, end)).differences).toEqual([])
    }
    await fc.assert(fc.asyncProperty(acts, run), { seed: 430_013, numRuns: 12 })
    expect(kept).toBeGreaterThan(20)
  })
})
