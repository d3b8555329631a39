import { encode } from 'next-auth/jwt'
import pg from 'pg'
import { v7 } from 'uuid'
import { hashPassword } from '../../lib/access/store/password'
import { openSession } from '../../lib/access/store/sessions'
import type { Cluster } from '../../scripts/database/own-cluster'
import {
  insertAccount,
  insertDiver,
  insertDiverMembership,
  insertMembership,
  insertSquadDiver,
} from '../../seed/builders/people'
import { insertClub, insertSquad } from '../../seed/builders/programme'

/** A club on a full evening: one squad of twelve, and as many coaches as phones. */
export interface FullHouse {
  readonly divers: readonly string[]
  /** Account and session token of each coach. */
  readonly coaches: readonly { readonly id: string; readonly token: string }[]
}

const began = new Date('2025-01-01T00:00:00Z')
const givenNames = ['Ada', 'Bo', 'Cleo', 'Dov', 'Edda', 'Finn', 'Gwen', 'Hal', 'Isa', 'Jory', 'Kit', 'Lou']
const password = 'a-password-for-a-bench'

/** Makes it in the demo's programme. The process must have the application role's address. */
export async function makeFullHouse(cluster: Cluster, database: string, phones: number): Promise<FullHouse> {
  const owner = new pg.Client({ connectionString: cluster.urls(database).owner })
  await owner.connect()
  const [programme] = (await owner.query('SELECT "id", "zone" FROM "Programme"')).rows
  const [club, squad] = [v7(), v7()]
  await insertClub(owner, {
    id: club,
    programmeId: programme.id,
    name: 'Full House',
    zone: programme.zone,
    createdAt: began,
  })
  await insertSquad(owner, { id: squad, clubId: club, name: 'Full squad', createdAt: began })
  const divers: string[] = []
  const coaches: { id: string; token: string }[] = []
  const passwordHash = await hashPassword(password)
  for (let index = 0; index < phones; index++) {
    const id = v7()
    const email = `coach-${index}@full.example`
    await insertAccount(owner, {
      id,
      email,
      name: `Coach ${index}`,
      initials: `C${index}`,
      passwordHash,
      createdAt: began,
    })
    const role = index === 0 ? 'head' : 'assistant'
    await insertMembership(owner, {
      id: v7(),
      accountId: id,
      programmeId: programme.id,
      clubId: club,
      role,
      from: began,
    })
    const opened = await openSession(email, password, Date.now())
    if (opened.result !== 'open') throw new Error(`${email} could not sign in`)
    coaches.push({ id, token: await encode({ token: { sid: opened.session }, secret: cluster.secrets.sessionSecret }) })
  }
  for (const givenName of givenNames) {
    const id = v7()
    await insertDiver(owner, {
      id,
      programmeId: programme.id,
      givenName,
      familyName: 'Vale',
      bornOn: '2013-04-02',
      createdAt: began,
    })
    await insertDiverMembership(owner, { id: v7(), diverId: id, clubId: club, from: began })
    await insertSquadDiver(owner, { squadId: squad, diverId: id })
    divers.push(id)
  }
  await owner.end()
  return { divers, coaches }
}
