import { v7 as uuidv7 } from 'uuid'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { answerQuestion, checkMoment } from '../../lib/assessment/store/check-moment'
import { decideTarget } from '../../lib/assessment/store/decide'
import { recordConsent } from '../../lib/assessment/store/record-consent'
import { signSkill } from '../../lib/assessment/store/sign'
import { closeDatabase } from '../../lib/platform/db'
import { asAccountRow, countAs } from '../support/account-rows'
import { asRole } from '../support/database'
import { type Filmed, film, idOf } from '../support/filmed'
import { coachAs, dayLength, makeCoast, minute, noon, type PersonKey, type SmallCoast } from '../support/small-club'

const everybody = ['assistant', 'head', 'secondHead', 'elsewhere', 'reviewer', 'lead'] as const
const tables = ['MomentCheck', 'QuestionAnswer', 'DecisionQuestion'] as const
const later = noon + 2 * dayLength
let coast: SmallCoast
let filmed: Filmed
let question: string
let decision: string

/** A question by the head coach, the assistant's answer, and a decision that says so. */
beforeAll(async () => {
  coast = await makeCoast()
  const diver = coast.divers.here
  filmed = await film(coast, noon)
  await film(coast, noon + 10 * minute)
  const at = (who: PersonKey, after: number) => coachAs(coast, who, later + after * minute)
  const signing = { diver, pair: 'tread@poolside', level: 'one', waiver: null, reason: null } as const
  idOf(await signSkill(await at('assistant', 0), signing))
  const asking = { moment: filmed.moment, kind: 'questioned', words: 'Hands apart?' } as const
  question = idOf(await checkMoment(await at('head', 1), asking))
  idOf(await answerQuestion(await at('assistant', 2), { question, words: 'Locked.' }))
  const deciding = { diver, target: 'level:one', outcome: 'approve', reason: null, onlyCoach: null } as const
  const questions = [{ question, how: 'answered', reason: '' }] as const
  decision = idOf(
    await decideTarget(await at('head', 3), { ...deciding, wantsMoreOf: [], diverWants: null, questions }),
  )
})
afterAll(closeDatabase)

const seers = async (table: string): Promise<PersonKey[]> => {
  const of = (who: PersonKey) => countAs(coast.people[who], table, '"diverId" = $1', [coast.divers.here])
  const counts = await Promise.all(everybody.map(async (who) => [who, await of(who)] as const))
  return counts.flatMap(([who, count]) => (count === 0 ? [] : [who]))
}

const insert = (who: PersonKey, sql: string, values: unknown[]) =>
  asAccountRow(coast.people[who], (client) => client.query(sql, values))

const check = (
  who: PersonKey,
  changes: Partial<Record<'diver' | 'moment' | 'observation' | 'attempt' | 'by' | 'kind', string>> = {},
) =>
  insert(
    who,
    `INSERT INTO "MomentCheck" ("id", "clubId", "diverId", "momentId", "observationId", "attemptId", "kind", "by", "at")
     VALUES ($1, $2, $3, $4, $5, $6, $7, $8, now())`,
    [
      ...[uuidv7(), coast.clubs.here, changes.diver ?? coast.divers.here, changes.moment ?? filmed.moment],
      ...[changes.observation ?? filmed.observation, changes.attempt ?? filmed.attempt, changes.kind ?? 'accepted'],
      changes.by ?? coast.people[who],
    ],
  )
const answer = (who: PersonKey, of = question, by = coast.people[who]) =>
  insert(who, `INSERT INTO "QuestionAnswer" VALUES ($1, $2, $3, $4, $5, now(), $6)`, [
    ...[uuidv7(), coast.clubs.here, coast.divers.here, of, by, uuidv7()],
  ])
const refused = /row-level security/

describe('what is asked about moments', () => {
  it.each(tables)('%s is seen where the diver’s record is, and by nobody else', async (table) => {
    expect(await seers(table)).toEqual(['assistant', 'head', 'secondHead', 'reviewer', 'lead'])
    expect(await countAs(null, table)).toBe(0)
  })

  it.each(tables)('%s is never changed, not by its owner either', async (table) => {
    await asRole('owner', async (owner) => {
      await expect(owner.query(`UPDATE "${table}" SET "by" = "by"`)).rejects.toThrow(/append-only/)
      await expect(owner.query(`DELETE FROM "${table}"`)).rejects.toThrow(/append-only/)
      await expect(owner.query(`TRUNCATE "${table}" CASCADE`)).rejects.toThrow(/append-only/)
    })
    await expect(insert('head', `DELETE FROM "${table}"`, [])).rejects.toThrow(/permission denied/)
    await expect(insert('head', `UPDATE "${table}" SET "by" = "by"`, [])).rejects.toThrow(/permission denied/)
  })

  it('a check is a head coach’s, in her own name, on a moment of that diver as it stands in the record', async () => {
    await check('head')
    await check('secondHead')
    for (const who of ['assistant', 'elsewhere', 'reviewer', 'lead'] as const)
      await expect(check(who)).rejects.toThrow(refused)
    await expect(check('head', { by: coast.people.secondHead })).rejects.toThrow(refused)
    await expect(check('head', { diver: coast.divers.there })).rejects.toThrow(refused)
    await expect(check('elsewhere', { diver: coast.divers.there })).rejects.toThrow(refused)
    for (const key of ['moment', 'observation', 'attempt'] as const)
      await expect(check('head', { [key]: uuidv7() })).rejects.toThrow(refused)
    await expect(check('head', { kind: 'questioned' })).rejects.toThrow(/check constraint/)
    await expect(check('head', { kind: 'looked' })).rejects.toThrow(/check constraint/)
  })

  it('an answer is the rating coach’s, in her own name, to a question', async () => {
    await answer('assistant')
    for (const who of ['head', 'secondHead', 'elsewhere', 'lead'] as const)
      await expect(answer(who)).rejects.toThrow(refused)
    await expect(answer('assistant', question, coast.people.head)).rejects.toThrow(refused)
    await expect(answer('assistant', uuidv7())).rejects.toThrow(refused)
  })

  it('what a decision says is the decider’s, of her own decision', async () => {
    const say = (who: PersonKey, of = question, by = coast.people[who]) =>
      insert(who, `INSERT INTO "DecisionQuestion" VALUES ($1, $2, $3, $4, 'settled', $5, NULL)`, [
        ...[decision, of, coast.clubs.here, coast.divers.here, by],
      ])
    await expect(say('head')).rejects.toThrow(/duplicate key/)
    await expect(say('head', uuidv7())).rejects.toThrow(refused)
    for (const who of ['assistant', 'secondHead', 'elsewhere'] as const) await expect(say(who)).rejects.toThrow(refused)
    await expect(say('secondHead', question, coast.people.head)).rejects.toThrow(refused)
  })

  it('nothing is said of a film without consent to video, and what was asked before is still seen', async () => {
    const said = { diver: coast.divers.here, purpose: 'video', saidBy: 'Her mother' } as const
    await recordConsent(await coachAs(coast, 'head', later + 10 * minute), { ...said, given: false })
    for (const kind of ['accepted', 'not reachable']) await expect(check('head', { kind })).rejects.toThrow(refused)
    await check('head', { kind: 'withdrawn' })
    expect(await seers('MomentCheck')).toContain('assistant')
    await recordConsent(await coachAs(coast, 'head', later + 20 * minute), { ...said, given: true })
  })

  it('goes along when she moves: the new club sees all, who wrote her own rows, the rest of the old club nothing', async () => {
    const moved = new Date(later + 30 * minute)
    await asRole('owner', async (owner) => {
      await owner.query('UPDATE "DiverMembership" SET "to" = $2 WHERE "diverId" = $1', [coast.divers.here, moved])
      const row = [uuidv7(), coast.divers.here, coast.clubs.there, moved]
      await owner.query(
        'INSERT INTO "DiverMembership" ("id", "diverId", "clubId", "from") VALUES ($1, $2, $3, $4)',
        row,
      )
    })
    expect(await seers('MomentCheck')).toEqual(['head', 'elsewhere', 'reviewer', 'lead'])
    expect(await seers('QuestionAnswer')).toEqual(['assistant', 'elsewhere', 'reviewer', 'lead'])
    expect(await seers('DecisionQuestion')).toEqual(['head', 'elsewhere', 'reviewer', 'lead'])
    await expect(check('head')).rejects.toThrow(refused)
    await expect(answer('assistant')).rejects.toThrow(refused)
    await check('elsewhere')
  })
})
