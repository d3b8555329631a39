import { v7 as uuidv7 } from 'uuid'
import { afterAll, beforeEach, describe, expect, it } from 'vitest'
import { basisOf } from '../../lib/assessment/basis'
import type { Entry, ListName } from '../../lib/assessment/lists'
import { readTarget } from '../../lib/assessment/readiness/targets'
import { closeCall } from '../../lib/assessment/store/close-call'
import { decideTarget } from '../../lib/assessment/store/decide'
import { acceptRating, releaseAttempt } from '../../lib/assessment/store/release'
import { readReview } from '../../lib/assessment/store/review'
import { signSkill } from '../../lib/assessment/store/sign'
import { closeDatabase } from '../../lib/platform/db'
import { asAccountRow, countAs } from '../support/account-rows'
import { checkReadinessAsOwner } from '../support/check-readiness'
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

let coast: SmallCoast
beforeEach(async () => {
  coast = await makeCoast()
})
afterAll(closeDatabase)

type Rating = 0 | 1 | 2 | 3 | 4
const later = noon + 2 * dayLength

/** One rated attempt at treading, in a call of one; its ids. */
async function dive(rating: Rating, at: number, skill: 'tread' | 'jump' = 'tread') {
  const items = ratedAttempt(coast, {
    diver: coast.divers.here,
    skill,
    place: skill === 'tread' ? 'poolside' : '1m',
    at,
    ratings: skill === 'tread' ? { 'clear-water': rating } : { 'feet-together': rating },
  })
  const answers = await sendAs(coast, 'assistant', at + 2 * minute, items)
  expect(answers.map(({ result }) => result)).toEqual(['accepted', 'accepted', 'accepted'])
  const [call, attempt, observation] = items
  return { call: call?.id ?? '', attempt: attempt?.id ?? '', observation: observation?.id ?? '', seen: observation }
}

/** The coach corrects her rating of an attempt. */
async function correct(
  first: Awaited<ReturnType<typeof dive>>,
  rating: Rating,
  at: number,
  who: PersonKey = 'assistant',
) {
  if (first.seen?.kind !== 'observation') throw new Error('no observation')
  const id = uuidv7({ msecs: at })
  const again = { ...first.seen, id, observedAt: at, ratings: { 'clear-water': rating } }
  const item = { ...again, supersedes: { id: first.observation, reason: 'Looked at it again.' } }
  expect(await sendAs(coast, who, at, [item])).toMatchObject([{ result: 'accepted' }])
  return id
}

async function listed<L extends ListName>(list: L, at: number, who: PersonKey = 'head') {
  const scope = await coachAs(coast, who, at)
  const { divers } = await readReview(scope, scope.clubs ?? [])
  return divers
    .flatMap(({ entries }) => entries)
    .filter((entry): entry is Extract<Entry, { list: L }> => entry.list === list)
}

const treading = () => ({
  diver: coast.divers.here,
  pair: 'tread@poolside' as const,
  level: 'one',
  waiver: null,
  reason: null,
})
const levelOne = () => ({
  diver: coast.divers.here,
  target: 'level:one' as const,
  outcome: 'approve' as const,
  reason: null,
  wantsMoreOf: [],
  diverWants: null,
  onlyCoach: null,
})
async function ready() {
  const first = await dive(3, noon)
  await dive(3, noon + 10 * minute)
  expect(await signSkill(await coachAs(coast, 'assistant', later), treading())).toMatchObject({ ok: true })
  return first
}
const clean = async (at: number) => expect((await checkReadinessAsOwner(coast, at)).differences).toEqual([])

describe('an attempt at a closed skill', () => {
  it('is listed, earns nothing, and counts when the head coach has released it in writing, once', async () => {
    const { attempt } = await dive(4, noon, 'jump')
    await dive(4, noon + 10 * minute, 'jump')
    expect((await listed('flagged', later)).map((entry) => entry.attempt.id)).toContain(attempt)
    const release = async (who: PersonKey, reason: string) =>
      releaseAttempt(await coachAs(coast, who, later), { attempt, reason })
    expect(await release('assistant', 'I saw it.')).toMatchObject({ refusal: { code: 'not the head coach' } })
    expect(await release('elsewhere', 'I saw it.')).toMatchObject({ refusal: { code: 'not found' } })
    expect(await release('head', '  ')).toMatchObject({ refusal: { code: 'no reason', field: 'reason' } })
    expect(await release('head', 'She treads water; it was not on record yet.')).toMatchObject({ ok: true })
    expect(await release('secondHead', 'So do I.')).toMatchObject({ refusal: { code: 'released before' } })
    expect((await listed('flagged', later)).map((entry) => entry.attempt.id)).not.toContain(attempt)
    await clean(later)
  })

  it('is not released where the skill was open', async () => {
    const { attempt } = await dive(4, noon)
    const outcome = await releaseAttempt(await coachAs(coast, 'head', later), { attempt, reason: 'For good measure.' })
    expect(outcome).toMatchObject({ refusal: { code: 'not flagged' } })
  })

  it('and a signature on it at once are done one after the other: signed only on what was released', async () => {
    await ready()
    const at = later + 10 * minute
    const flagged = [await dive(4, noon + 20 * minute, 'jump'), await dive(4, noon + 30 * minute, 'jump')]
    const [first, second] = flagged
    const head = await coachAs(coast, 'head', at)
    await releaseAttempt(head, { attempt: first?.attempt ?? '', reason: 'The prerequisite was signed since.' })
    const jump = { diver: coast.divers.here, pair: 'jump@1m' as const, level: 'one', waiver: null, reason: null }
    const [released, signed] = await Promise.all([
      releaseAttempt(head, { attempt: second?.attempt ?? '', reason: 'The prerequisite was signed since.' }),
      signSkill(await coachAs(coast, 'assistant', at), jump),
    ])
    expect(released).toMatchObject({ ok: true })
    if (!signed.ok) {
      expect(signed.refusal.code).toBe('standard')
      expect(await signSkill(await coachAs(coast, 'assistant', at), jump)).toMatchObject({ ok: true })
    }
    const evidence = await asAccountRow(coast.people.head, (client) =>
      client.query('SELECT "evidence" FROM "SignOff" WHERE "skill" = $1 AND "diverId" = $2', [
        'jump',
        coast.divers.here,
      ]),
    )
    expect(evidence.rows).toEqual([{ evidence: flagged.map(({ attempt }) => attempt) }])
    await clean(at)
  })
})

describe('a raised critical rating', () => {
  it('counts against the diver until another head coach accepts it', async () => {
    const first = await dive(1, noon)
    const raise = await correct(first, 3, noon + 60 * minute)
    expect(await listed('raised', later)).toMatchObject([{ raises: [{ criterion: 'clear-water', from: 1, to: 3 }] }])
    const accept = async (who: PersonKey, reason: string) =>
      acceptRating(await coachAs(coast, who, later), { observation: raise, reason })
    expect(await accept('assistant', 'It is right.')).toMatchObject({ refusal: { code: 'not the head coach' } })
    expect(await accept('elsewhere', 'It is right.')).toMatchObject({ refusal: { code: 'not found' } })
    expect(await accept('head', '')).toMatchObject({ refusal: { field: 'reason' } })
    const both = await Promise.all([accept('head', 'The clip shows it.'), accept('secondHead', 'The clip shows it.')])
    expect(both.filter(({ ok }) => ok)).toHaveLength(1)
    expect(both.find(({ ok }) => !ok)).toMatchObject({ refusal: { code: 'nothing raised' } })
    expect(await listed('raised', later)).toEqual([])
    await clean(later)
  })

  it('is not accepted by the head coach who raised it while the club has another', async () => {
    const items = ratedAttempt(coast, {
      diver: coast.divers.here,
      skill: 'tread',
      place: 'poolside',
      at: noon,
      ratings: { 'clear-water': 1 },
    })
    await sendAs(coast, 'head', noon + 2 * minute, items)
    const [call, attempt, seen] = items
    const raise = await correct(
      { call: call?.id ?? '', attempt: attempt?.id ?? '', observation: seen?.id ?? '', seen },
      3,
      noon + 60 * minute,
      'head',
    )
    const accept = async (who: PersonKey) =>
      acceptRating(await coachAs(coast, who, later), { observation: raise, reason: 'The clip shows it.' })
    expect(await accept('head')).toMatchObject({ refusal: { code: 'own rating' } })
    expect(await accept('secondHead')).toMatchObject({ ok: true })
  })

  it('never helps a sign-off before it is accepted', async () => {
    const first = await dive(1, noon)
    await dive(3, noon + 10 * minute)
    await dive(3, noon + 20 * minute)
    const raise = await correct(first, 4, noon + 60 * minute)
    const sign = async () => signSkill(await coachAs(coast, 'assistant', later), treading())
    expect(await sign()).toMatchObject({ refusal: { code: 'standard' } })
    await acceptRating(await coachAs(coast, 'head', later), { observation: raise, reason: 'The clip shows it.' })
    expect(await sign()).toMatchObject({ ok: true })
  })
})

describe('a call', () => {
  const callOf = async (at: number) => {
    const [call] = ratedAttempt(coast, { diver: coast.divers.here, skill: 'tread', place: 'poolside', at, ratings: {} })
    await sendAs(coast, 'assistant', at, [{ ...call, count: 3 }])
    return call?.id ?? ''
  }

  it('is listed when its day has ended, and closed with a reason by who called it or the head coach', async () => {
    const call = await callOf(noon)
    expect(await listed('not rated', noon + 60 * minute)).toEqual([])
    expect(await listed('not rated', later)).toMatchObject([{ call: { id: call, dived: [] }, missing: 3 }])
    const close = async (who: PersonKey, reason: string) =>
      closeCall(await coachAs(coast, who, later), { call, reason })
    expect(await close('elsewhere', 'Thunder.')).toMatchObject({ refusal: { code: 'not found' } })
    expect(await close('assistant', ' ')).toMatchObject({ refusal: { field: 'reason' } })
    expect(await close('assistant', 'Thunder: the pool was cleared.')).toMatchObject({ ok: true })
    expect(await close('head', 'Thunder.')).toMatchObject({ refusal: { code: 'closed before' } })
    expect(await listed('not rated', later)).toEqual([])
  })

  it('that was closed is seen by the diver’s club only, and never changed', async () => {
    const call = await callOf(noon)
    await closeCall(await coachAs(coast, 'head', later), { call, reason: 'Thunder.' })
    expect(await countAs(coast.people.assistant, 'CallClosure')).toBe(1)
    expect(await countAs(coast.people.elsewhere, 'CallClosure')).toBe(0)
    expect(await countAs(null, 'CallClosure')).toBe(0)
    await expect(
      asAccountRow(coast.people.head, (client) => client.query('DELETE FROM "CallClosure"')),
    ).rejects.toThrow(/permission denied/)
  })
})

describe('a decision on a page that was opened before', () => {
  const basis = async (at: number) => {
    const scope = await coachAs(coast, 'head', at)
    const evaluation = (await readReview(scope, scope.clubs ?? [])).evaluations.get(coast.divers.here)
    if (!evaluation) throw new Error('no diver')
    return basisOf(evaluation, readTarget(evaluation, 'level:one'), [])
  }

  it('is taken on what was seen', async () => {
    await ready()
    const seen = await basis(later + minute)
    const outcome = await decideTarget(await coachAs(coast, 'head', later + 5 * minute), { ...levelOne(), basis: seen })
    expect(outcome).toMatchObject({ ok: true })
    await clean(later + 5 * minute)
  })

  it('is refused when its evidence was superseded meanwhile, although it would still be met', async () => {
    const first = await ready()
    const seen = await basis(later + minute)
    await correct(first, 4, later + 2 * minute)
    const outcome = await decideTarget(await coachAs(coast, 'head', later + 5 * minute), { ...levelOne(), basis: seen })
    expect(outcome).toMatchObject({ refusal: { code: 'changed' } })
    const again = { ...levelOne(), basis: await basis(later + 6 * minute) }
    expect(await decideTarget(await coachAs(coast, 'head', later + 7 * minute), again)).toMatchObject({ ok: true })
  })

  it('is refused when its evidence was lowered at the very moment, or was taken before it and stands to review', async () => {
    const first = await ready()
    const seen = await basis(later + minute)
    const [, outcome] = await Promise.all([
      correct(first, 1, later + 2 * minute),
      decideTarget(await coachAs(coast, 'head', later + 2 * minute), { ...levelOne(), basis: seen }),
    ])
    if (outcome.ok) expect(await listed('to review', later + 3 * minute)).toMatchObject([{ target: 'level:one' }])
    else expect(['not met', 'changed']).toContain(outcome.refusal.code)
    expect((await listed('in doubt', later + 3 * minute)).map(({ pair }) => pair)).toEqual(['tread@poolside'])
    await clean(later + 3 * minute)
  })
})

it('shows a head coach her own club and no other', async () => {
  await dive(4, noon, 'jump')
  expect(await listed('flagged', later)).toHaveLength(1)
  expect(await listed('flagged', later, 'elsewhere')).toEqual([])
})
