import { hashPassword } from '../../lib/access/store/password'
import { parseDay } from '../../lib/assessment/time'
import {
  insertAccount,
  insertConsents,
  insertDiver,
  insertDiverMembership,
  insertMembership,
  insertSquadDiver,
} from '../builders/people'
import { insertClub, insertProgramme, insertSquad, insertVenueFlag } from '../builders/programme'
import type { Owner } from '../builders/rows'
import { chanceOf } from './chance'
import { type ClubKey, clubs, coaches, officers, programmeName, type SquadKey, squads } from './coast'
import { instantOn, zone } from './season'
import { stories } from './stories/stories'
import type { Story } from './stories/story'

// Roles and memberships began well before the season, so that no machine's clock stands before them.
const since = Date.UTC(2023, 8, 1, 9)

const idOf = (kind: string, key: string): string => chanceOf(kind, key).id(since)
const found = <Key, Value>(map: ReadonlyMap<Key, Value>, key: Key): Value => {
  const value = map.get(key)
  if (value === undefined) throw new Error(`the demo names ${String(key)}, which it does not have`)
  return value
}

/** Who and what the demo has, by the keys of its data. */
export interface Coast {
  readonly programme: string
  readonly club: (key: ClubKey) => string
  readonly account: (key: string) => string
  readonly diver: (key: string) => string
}

/** The ids are made from the keys, so that they are known before and after. */
export const coast: Coast = {
  programme: idOf('programme', programmeName),
  club: (key) => idOf('club', key),
  account: (key) => idOf('account', key),
  diver: (key) => idOf('diver', key),
}

/** Enters what has no screen yet: programme, clubs, accounts, divers, squads. For the owner, inside a transaction. */
export async function enterCoast(owner: Owner, password: string, told: readonly Story[] = stories): Promise<void> {
  const at = new Date(since)
  const programmeId = coast.programme
  await insertProgramme(owner, { id: programmeId, name: programmeName, zone, createdAt: at })
  for (const club of clubs)
    await insertClub(owner, { id: coast.club(club.key), programmeId, name: club.name, zone, createdAt: at })
  for (const [index, person] of [...coaches, ...officers].entries()) {
    const id = coast.account(person.key)
    const { email, name, initials } = person
    // The sign-in page lists the accounts in the order in which they were made.
    const createdAt = new Date(since + index * 60_000)
    await insertAccount(owner, { id, email, name, initials, passwordHash: await hashPassword(password), createdAt })
    for (const { club, role } of person.posts)
      await insertMembership(owner, {
        id: idOf('membership', `${person.key} ${club ?? 'programme'}`),
        accountId: id,
        programmeId,
        clubId: club && coast.club(club),
        role,
        from: at,
      })
  }
  for (const club of clubs)
    await insertVenueFlag(owner, {
      id: idOf('venue', club.key),
      clubId: coast.club(club.key),
      feature: 'board-3m',
      has: club.board3m,
      recordedAt: at,
      recordedBy: coast.account(club.head),
    })
  await enterDivers(owner, at, told)
}

async function enterDivers(owner: Owner, at: Date, told: readonly Story[]): Promise<void> {
  const homes = new Map<SquadKey, ClubKey>(squads.map((squad) => [squad.key, squad.club]))
  const heads = new Map(clubs.map((club) => [coast.club(club.key), club.head]))
  for (const squad of squads)
    await insertSquad(owner, {
      id: idOf('squad', squad.key),
      clubId: coast.club(squad.club),
      name: squad.name,
      createdAt: at,
    })
  for (const story of told) {
    const diverId = coast.diver(story.key)
    await insertDiver(owner, {
      id: diverId,
      programmeId: coast.programme,
      givenName: story.given,
      familyName: story.family,
      bornOn: story.born,
      createdAt: at,
    })
    const clubId = coast.club(found(homes, story.squad))
    // She joined the week before she was first on the deck.
    const from = story.begins ? new Date(instantOn(parseDay(story.begins) - 7, 9)) : at
    await insertDiverMembership(owner, { id: idOf('diver membership', story.key), diverId, clubId, from })
    await insertSquadDiver(owner, { squadId: idOf('squad', story.squad), diverId })
    if (story.consentsMissing) continue
    const chance = chanceOf('consents', story.key)
    const recordedBy = coast.account(found(heads, clubId))
    const consent = { diverId, clubId, saidBy: 'A parent, in writing', recordedBy, recordedAt: at }
    await insertConsents(owner, consent, () => chance.id(since))
  }
}
