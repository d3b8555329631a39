import { afterAll, beforeEach, describe, expect, it } from 'vitest'
import { decideTarget } from '../../lib/assessment/store/decide'
import { revoke } from '../../lib/assessment/store/revoke'
import { signSkill } from '../../lib/assessment/store/sign'
import { closeDatabase } from '../../lib/platform/db'
import { checkReadinessAsOwner } from '../support/check-readiness'
import { asRole } from '../support/database'
import { readReadiness } from '../support/rows'
import {
  coachAs,
  dayLength,
  makeCoast,
  minute,
  noon,
  ratedAttempt,
  type SmallCoast,
  sendAs,
} from '../support/small-club'

let coast: SmallCoast
beforeEach(async () => {
  coast = await makeCoast()
})
afterAll(closeDatabase)

const treading = 'tread@poolside' as const
const later = noon + 2 * dayLength
const signing = () => ({ diver: coast.divers.here, pair: treading, level: 'one', waiver: null, reason: null })
const levelOne = () => ({
  diver: coast.divers.here,
  target: 'level:one' as const,
  outcome: 'approve' as const,
  reason: null,
  wantsMoreOf: [],
  diverWants: null,
  onlyCoach: null,
})

/** Two clean attempts, which the small standard asks for, by the assistant. */
async function train(ratings: Record<string, 0 | 1 | 2 | 3 | 4> = { 'clear-water': 3 }, at = noon) {
  for (const nth of [0, 1]) {
    const items = ratedAttempt(coast, {
      diver: coast.divers.here,
      skill: 'tread',
      place: 'poolside',
      at: at + nth * 10 * minute,
      ratings,
    })
    const answers = await sendAs(coast, 'assistant', at + (nth * 10 + 2) * minute, items)
    expect(answers.map((answer) => answer.result)).toEqual(['accepted', 'accepted', 'accepted'])
  }
}

const ledger = () =>
  asRole('owner', async (owner) => {
    const { rows } = await owner.query(
      'SELECT "seq", "kind", "payload" FROM "Ledger" WHERE "programmeId" = $1 ORDER BY "seq"',
      [coast.programme],
    )
    return rows as { seq: string; kind: string; payload: string }[]
  })

describe('a sign-off', () => {
  it('is refused with what it still wants, and given when the standard is reached', async () => {
    const early = await signSkill(await coachAs(coast, 'assistant', noon), signing())
    expect(early).toMatchObject({ ok: false, refusal: { code: 'standard' } })
    await train()
    expect(await signSkill(await coachAs(coast, 'assistant', later), signing())).toMatchObject({ ok: true })
    expect((await ledger()).map(({ seq, kind }) => [seq, kind])).toEqual([
      ['1', 'edition published'],
      ['2', 'signed off'],
    ])
    const again = await signSkill(await coachAs(coast, 'head', later), signing())
    expect(again).toMatchObject({ ok: false, refusal: { code: 'signed before' } })
  })

  it('is never given over a critical criterion that fell short, by override neither', async () => {
    await train({ 'clear-water': 2 })
    const waiver = { coaches: true, days: true, moments: true, certainty: true, count: 2 } as const
    const outcome = await signSkill(await coachAs(coast, 'head', later), {
      ...signing(),
      waiver,
      reason: 'The meet is on Sunday.',
    })
    expect(outcome).toMatchObject({ ok: false, refusal: { code: 'standard' } })
  })

  it('is given by override of the head coach only, in writing', async () => {
    await train()
    const waiver = { days: true } as const
    const by = (who: 'assistant' | 'head', reason: string | null) =>
      coachAs(coast, who, later).then((scope) => signSkill(scope, { ...signing(), waiver, reason }))
    expect(await by('assistant', 'I saw it.')).toMatchObject({ ok: false, refusal: { code: 'not the signer' } })
    expect(await by('head', null)).toMatchObject({ ok: false, refusal: { code: 'no reason', field: 'reason' } })
  })

  it('does not exist for a coach of another club', async () => {
    await train()
    const outcome = await signSkill(await coachAs(coast, 'elsewhere', later), signing())
    expect(outcome).toMatchObject({ ok: false, refusal: { code: 'not found' } })
  })

  it('is taken back by the head coach with a reason, once', async () => {
    await train()
    const signed = await signSkill(await coachAs(coast, 'assistant', later), signing())
    if (!signed.ok) throw new Error(signed.refusal.message)
    const request = { kind: 'sign-off', subject: signed.id, reason: 'The clip shows another diver.' } as const
    expect(await revoke(await coachAs(coast, 'assistant', later), request)).toMatchObject({
      refusal: { code: 'not the head coach' },
    })
    expect(await revoke(await coachAs(coast, 'head', later), request)).toMatchObject({ ok: true })
    expect(await revoke(await coachAs(coast, 'head', later), request)).toMatchObject({
      refusal: { code: 'revoked before' },
    })
    const last = (await ledger()).at(-1)
    expect(last?.kind).toBe('revoked')
    expect(last?.payload).not.toContain('another diver')
  })
})

describe('a decision', () => {
  const ready = async () => {
    await train()
    const signed = await signSkill(await coachAs(coast, 'assistant', later), signing())
    expect(signed.ok).toBe(true)
  }

  it('approves what is ready, moves the readiness row, and agrees with a batch evaluation of the raw rows', async () => {
    await ready()
    const scope = await coachAs(coast, 'head', later + minute)
    const row = (await readReadiness(scope)).find((one) => one.target === 'level:one')
    expect(row).toMatchObject({ ready: true, status: 'met', held: 'no' })
    expect(await decideTarget(scope, levelOne())).toMatchObject({ ok: true })
    const after = (await readReadiness(scope)).find((one) => one.target === 'level:one')
    expect(after).toMatchObject({ ready: false, held: 'approved' })
    expect((await ledger()).at(-1)?.kind).toBe('decided')
  })

  it('ends in one approval when two head coaches decide at once, and tells the second', async () => {
    await ready()
    const both = await Promise.all(
      (['head', 'secondHead'] as const).map(async (who) =>
        decideTarget(await coachAs(coast, who, later + minute), levelOne()),
      ),
    )
    expect(both.filter((outcome) => outcome.ok)).toHaveLength(1)
    const refused = both.find((outcome) => !outcome.ok)
    expect(refused).toMatchObject({ ok: false, refusal: { code: 'decided before' } })
    const decided = (await ledger()).filter(({ kind }) => kind === 'decided')
    expect(decided).toHaveLength(1)
  })

  it('is judged on the record inside the transaction: a shortfall that came in meanwhile stops it', async () => {
    await ready()
    await train({ 'clear-water': 1 }, later + 2 * minute)
    const outcome = await decideTarget(await coachAs(coast, 'head', later + 60 * minute), levelOne())
    expect(outcome).toMatchObject({ ok: false, refusal: { code: 'not met' } })
    if (!outcome.ok) expect(outcome.refusal.message).toContain('in doubt')
  })

  it('returns with a reason and comes back with a new success there, never with a failure', async () => {
    await ready()
    const at = later + minute
    const wanted = { ...levelOne(), outcome: 'return' as const, reason: 'Once more with the left side.' }
    expect(await decideTarget(await coachAs(coast, 'head', at), { ...wanted, reason: ' ' })).toMatchObject({
      refusal: { field: 'reason' },
    })
    expect(await decideTarget(await coachAs(coast, 'head', at), wanted)).toMatchObject({ ok: true })
    const isReady = async (when: number) =>
      (await readReadiness(await coachAs(coast, 'head', when))).find((one) => one.target === 'level:one')?.ready
    expect(await isReady(at + minute)).toBe(false)
    expect(await decideTarget(await coachAs(coast, 'head', at + minute), levelOne())).toMatchObject({
      refusal: { code: 'blocked' },
    })
    await train({ 'clear-water': 4 }, at + 10 * minute)
    expect(await isReady(at + 60 * minute)).toBe(true)
  })

  it('is for the diver’s head coach, and asks why when she is the only coach in the evidence', async () => {
    await ready()
    const by = async (who: 'assistant' | 'elsewhere') =>
      decideTarget(await coachAs(coast, who, later + minute), levelOne())
    expect(await by('assistant')).toMatchObject({ ok: false, refusal: { code: 'not the head coach' } })
    expect(await by('elsewhere')).toMatchObject({ ok: false, refusal: { code: 'not found' } })
  })

  it('keeps readiness rows that equal a fresh evaluation, whatever happened in between', async () => {
    await ready()
    const at = later + minute
    await decideTarget(await coachAs(coast, 'head', at), levelOne())
    await train({ 'clear-water': 0 }, at + 10 * minute)
    const found = await checkReadinessAsOwner(coast, at + 60 * minute)
    expect(found.rows).toBeGreaterThan(0)
    expect(found.differences).toEqual([])
    await asRole('superuser', async (superuser) => {
      await superuser.query(
        `UPDATE "Readiness" SET "status" = 'met', "ready" = true WHERE "diverId" = $1 AND "target" = 'level:two'`,
        [coast.divers.here],
      )
    })
    const spoilt = await checkReadinessAsOwner(coast, at + 60 * minute)
    expect(spoilt.differences).toMatchObject([{ diver: coast.divers.here, target: 'level:two' }])
  })
})
