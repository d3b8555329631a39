import { v7 as uuidv7 } from 'uuid'
import { coachingScopeOf, type Scope, scopeOf } from '../../lib/access/scope'
import { findActor } from '../../lib/access/store/actors'
import type { DeckItem, IncidentItem } from '../../lib/assessment/deck/contract'
import { publishEdition } from '../../lib/assessment/store/publish'
import { syncDeck } from '../../lib/assessment/store/sync/sync'
import {
  insertAccount,
  insertConsents,
  insertDiver,
  insertDiverMembership,
  insertMembership,
} from '../../seed/builders/people'
import { insertClub, insertProgramme, insertVenueFlag } from '../../seed/builders/programme'
import { asRole } from './database'
import { tinyEdition } from './tiny-edition'

const began = new Date('2025-01-01T00:00:00Z')
export const noon = Date.parse('2026-03-02T12:00:00Z')
export const minute = 60_000
export const dayLength = 86_400_000

/** Two clubs of one programme, their people, a published edition; made through the owner, used through the application role. */
export interface SmallCoast {
  readonly programme: string
  readonly clubs: { readonly here: string; readonly there: string }
  readonly people: Readonly<Record<'assistant' | 'head' | 'secondHead' | 'elsewhere' | 'reviewer' | 'lead', string>>
  readonly divers: { readonly here: string; readonly there: string }
  readonly edition: string
}

/** Makes them all with fresh ids, so that tests of one file do not meet. */
export async function makeCoast(): Promise<SmallCoast> {
  const id = () => uuidv7()
  const programme = id()
  const clubs = { here: id(), there: id() }
  const people = { assistant: id(), head: id(), secondHead: id(), elsewhere: id(), reviewer: id(), lead: id() }
  const divers = { here: id(), there: id() }
  const posts = [
    [people.assistant, clubs.here, 'assistant'],
    [people.head, clubs.here, 'head'],
    [people.secondHead, clubs.here, 'head'],
    [people.elsewhere, clubs.there, 'head'],
    [people.reviewer, null, 'reviewer'],
    [people.lead, null, 'lead'],
  ] as const
  await asRole('owner', async (owner) => {
    await insertProgramme(owner, { id: programme, name: 'Small coast', zone: 'UTC', createdAt: began })
    for (const clubId of Object.values(clubs)) {
      await insertClub(owner, { id: clubId, programmeId: programme, name: 'A club', zone: 'UTC', createdAt: began })
      const flag = { feature: 'board-3m', has: true, recordedAt: began, recordedBy: people.lead } as const
      await insertVenueFlag(owner, { id: id(), clubId, ...flag })
    }
    for (const [accountId, clubId, role] of posts) {
      const email = `${accountId}@coast.example`
      await insertAccount(owner, {
        id: accountId,
        email,
        name: role,
        initials: role.slice(0, 2),
        passwordHash: '-',
        createdAt: began,
      })
      await insertMembership(owner, { id: id(), accountId, programmeId: programme, clubId, role, from: began })
    }
    for (const [diver, clubId] of [
      [divers.here, clubs.here],
      [divers.there, clubs.there],
    ] as const) {
      const words = { givenName: 'Mira', familyName: 'Oake', bornOn: '2014-05-01' }
      await insertDiver(owner, { id: diver, programmeId: programme, ...words, createdAt: began })
      await insertDiverMembership(owner, { id: id(), diverId: diver, clubId, from: began })
      const consent = { diverId: diver, clubId, saidBy: 'Her mother', recordedBy: people.head, recordedAt: began }
      await insertConsents(owner, consent, id)
    }
  })
  const coast = { programme, clubs, people, divers, edition: '' }
  const published = await publishEdition(await officeAs(coast, 'lead', began.getTime()), tinyEdition())
  if (!published.ok) throw new Error(JSON.stringify(published.problems))
  return { ...coast, edition: published.hash }
}

export type PersonKey = keyof SmallCoast['people']

async function actorOf(coast: Pick<SmallCoast, 'people'>, who: PersonKey, at: number) {
  const actor = await findActor(coast.people[who], coast.people[who], at)
  if (!actor) throw new Error(`${who} has no role`)
  return actor
}

/** The coaching scope of somebody at an instant. */
export const coachAs = async (coast: Pick<SmallCoast, 'people'>, who: PersonKey, at: number): Promise<Scope> =>
  coachingScopeOf(await actorOf(coast, who, at), at)

/** All that somebody may read at an instant. */
export const officeAs = async (coast: Pick<SmallCoast, 'people'>, who: PersonKey, at: number): Promise<Scope> =>
  scopeOf(await actorOf(coast, who, at), at)

const device = uuidv7()

interface Rated {
  readonly diver: string
  readonly skill: string
  readonly place: '1m' | '3m' | 'poolside'
  readonly at: number
  readonly ratings: Record<string, 0 | 1 | 2 | 3 | 4>
}

/** A call of one, its attempt and what the coach saw of it. */
export function ratedAttempt(coast: SmallCoast, { diver, skill, place, at, ratings }: Rated): DeckItem[] {
  const pair = { diver, skill, place, atLevel: 'one', device } as const
  const call = uuidv7({ msecs: at - minute })
  const attempt = uuidv7({ msecs: at })
  return [
    { kind: 'call', id: call, ...pair, count: 1, calledAt: at - minute },
    {
      kind: 'attempt',
      id: attempt,
      ...pair,
      call: { id: call, number: 1 },
      attemptedAt: at,
      setting: 'training',
      cued: false,
    },
    {
      kind: 'observation',
      id: uuidv7({ msecs: at + minute }),
      attempt,
      edition: coast.edition,
      observedOn: 'deck',
      observedAt: at + minute,
      ratings,
      restAsExpected: true,
      faults: [],
      note: null,
      moments: [],
      supersedes: null,
    },
  ]
}

/** An incident at a pair, as the deck records it. */
export const anIncidentItem = (diver: string, at: number, changes: Partial<IncidentItem> = {}): IncidentItem => ({
  kind: 'incident',
  id: uuidv7({ msecs: at }),
  diver,
  skill: 'tread',
  place: 'poolside',
  what: 'bad landing',
  attempt: null,
  note: null,
  happenedAt: at,
  device,
  ...changes,
})

/** Sends items as somebody's deck at an instant. */
export const sendAs = async (coast: SmallCoast, who: PersonKey, at: number, items: readonly unknown[]) =>
  syncDeck(await coachAs(coast, who, at), at, items)
