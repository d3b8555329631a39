import pg from 'pg'
import { v7 as uuidv7 } from 'uuid'
import { coachingScopeOf } from '../../../lib/access/scope'
import { findActor } from '../../../lib/access/store/actors'
import { hashPassword } from '../../../lib/access/store/password'
import type { DeckItem } from '../../../lib/assessment/deck/contract'
import { signSkill } from '../../../lib/assessment/store/sign'
import { syncDeck } from '../../../lib/assessment/store/sync/sync'
import type { PairKey } from '../../../lib/curriculum/edition/curriculum'
import { readEditionInForce } from '../../../lib/curriculum/store/editions'
import { closeDatabase } from '../../../lib/platform/db'
import { getEnv } from '../../../lib/platform/env'
import {
  insertAccount,
  insertConsents,
  insertDiver,
  insertDiverMembership,
  insertMembership,
  insertSquadDiver,
} from '../../../seed/builders/people'
import { insertClub, insertSquad } from '../../../seed/builders/programme'

/**
 * Run by a browser test: a club of its own in the demo's programme, with an assistant, a head coach and one diver who has
 * shown and been signed everything that the first level asks, but for the fall-in from the poolside. Prints who they are.
 */
const minute = 60_000
const wanted: readonly PairKey[] = [
  'deep-water@poolside',
  'takes-turn@poolside',
  'takes-turn@1m',
  'line-up@floor',
  'back-stance@floor',
  'push-glide@poolside',
  'jump-standing@poolside',
  'jump-standing@1m',
  'kneeling-fall-in@poolside',
  'shapes@floor',
  'hurdle@floor',
]

const { databaseOwnerUrl, demoPassword } = getEnv()
if (!databaseOwnerUrl || !demoPassword) throw new Error('the owner’s address and the demo’s password are needed')
const owner = new pg.Client({ connectionString: databaseOwnerUrl })
await owner.connect()

const [programme] = (await owner.query('SELECT "id", "zone" FROM "Programme" WHERE "isDemo"')).rows
const began = new Date('2025-01-01T00:00:00Z')
const ids = { club: uuidv7(), squad: uuidv7(), assistant: uuidv7(), head: uuidv7(), diver: uuidv7() }
const tag = ids.club.slice(-8)
const name = `Cove ${tag}`
await insertClub(owner, { id: ids.club, programmeId: programme.id, name, zone: programme.zone, createdAt: began })
const passwordHash = await hashPassword(demoPassword)
for (const role of ['assistant', 'head'] as const) {
  const email = `${role}-${tag}@cove.example`
  await insertAccount(owner, {
    id: ids[role],
    email,
    name: `${role} of the cove`,
    initials: role.slice(0, 2),
    passwordHash,
    createdAt: began,
  })
  await insertMembership(owner, {
    id: uuidv7(),
    accountId: ids[role],
    programmeId: programme.id,
    clubId: ids.club,
    role,
    from: began,
  })
}
await insertDiver(owner, {
  id: ids.diver,
  programmeId: programme.id,
  givenName: 'Sunniva',
  familyName: 'Marsh',
  bornOn: '2013-04-02',
  createdAt: began,
})
await insertDiverMembership(owner, { id: uuidv7(), diverId: ids.diver, clubId: ids.club, from: began })
await insertConsents(
  owner,
  { diverId: ids.diver, clubId: ids.club, saidBy: 'Her father', recordedBy: ids.head, recordedAt: began },
  uuidv7,
)
await insertSquad(owner, { id: ids.squad, clubId: ids.club, name: 'Cove squad', createdAt: began })
await insertSquadDiver(owner, { squadId: ids.squad, diverId: ids.diver })
await owner.end()

const scopeAs = async (who: 'assistant' | 'head', minutesAgo: number) => {
  const actor = await findActor(ids[who], ids[who], Date.now())
  if (!actor) throw new Error(`${who} has no role`)
  return coachingScopeOf(actor, Date.now() - minutesAgo * minute)
}

let ago = 28 * 60
for (const key of wanted) {
  const scope = await scopeAs('assistant', ago)
  const curriculum = await readEditionInForce(scope)
  const pair = curriculum.pairs.get(key)
  if (!pair) throw new Error(`the demo does not teach ${key}`)
  const count = Math.max(pair.standard.successes, 2)
  const call = uuidv7({ msecs: scope.at - 30 * minute })
  const at = {
    diver: ids.diver,
    skill: pair.holding.skill,
    place: pair.holding.place,
    atLevel: 'soundings',
    device: ids.squad,
  }
  const items: DeckItem[] = [{ kind: 'call', id: call, ...at, count, calledAt: scope.at - 30 * minute }]
  for (let number = 1; number <= count; number++) {
    const attempt = uuidv7({ msecs: scope.at - (30 - number) * minute })
    items.push(
      {
        kind: 'attempt',
        id: attempt,
        ...at,
        call: { id: call, number },
        attemptedAt: scope.at - (30 - number) * minute,
        setting: 'training',
        cued: false,
      },
      {
        kind: 'observation',
        id: uuidv7({ msecs: scope.at - (29 - number) * minute }),
        attempt,
        edition: curriculum.hash,
        observedOn: 'deck',
        observedAt: scope.at - (29 - number) * minute,
        ratings: Object.fromEntries(pair.criteria.map(({ criterion }) => [criterion.key, 4])),
        restAsExpected: false,
        faults: [],
        note: null,
        moments: [],
        supersedes: null,
      },
    )
  }
  const answers = await syncDeck(scope, scope.at, items)
  const refused = answers.find((answer) => answer.result !== 'accepted')
  if (refused) throw new Error(`${key}: ${refused.message}`)
  ago -= 40
  const signed = await signSkill(await scopeAs('head', ago), {
    diver: ids.diver,
    pair: key,
    level: 'soundings',
    waiver: { coaches: true, days: true },
    reason: 'Set up for a test of the whole thread.',
  })
  if (!signed.ok) throw new Error(`${key}: ${signed.refusal.message}`)
  ago -= 10
}
await closeDatabase()
process.stdout.write(
  `${JSON.stringify({ ...ids, name, emails: { assistant: `assistant-${tag}@cove.example`, head: `head-${tag}@cove.example` } })}\n`,
)
