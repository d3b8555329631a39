import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { invitedScopeOf, scopeOf } from '../../lib/access/scope'
import { prepareAccount } from '../../lib/access/store/accounts'
import { findActor } from '../../lib/access/store/actors'
import { listClubs } from '../../lib/access/store/clubs'
import { findInvitation } from '../../lib/access/store/invitations'
import { acceptInvitation } from '../../lib/assessment/store/posts'
import { closeDatabase } from '../../lib/platform/db'
import { run as club } from '../../scripts/commands/club'
import { run as invite } from '../../scripts/commands/invite'
import { run as programme } from '../../scripts/commands/programme'
import { asRole, resetDatabase } from '../support/database'
import { told } from '../support/told'

beforeAll(resetDatabase)
afterAll(closeDatabase)

const tokenIn = (text: string): string => /\/account\/invited\/([\w-]{43})\n/.exec(text)?.[1] ?? ''

async function join(token: string, email: string) {
  const found = await findInvitation(token)
  if (!found) throw new Error('the link opens nothing')
  const newcomer = await prepareAccount({ email, name: 'Ines Vold', initials: 'IV', password: 'twelve letters' })
  const outcome = await acceptInvitation(invitedScopeOf(newcomer.id, found.programme, Date.now()), found.hash, newcomer)
  expect(outcome).toEqual({ ok: true })
  const actor = await findActor(newcomer.id, newcomer.id, Date.now())
  if (!actor) throw new Error('nobody has joined')
  return { actor, found }
}

describe('a programme of one’s own', () => {
  it('begins at the console, in an empty database, with a curriculum and the link for its lead', async () => {
    expect(await told(programme, 'Own Coast')).toMatchObject({ code: 2, out: '' })
    expect(await told(programme, 'Own Coast', '--zone', 'Mars/Base')).toMatchObject({ code: 2 })
    await expect(told(programme, 'Own Coast', '--zone', 'UTC', '--curriculum', 'no/such')).rejects.toThrow(
      /nothing was begun/,
    )
    const begun = await told(programme, 'Own Coast', '--zone', 'Europe/Dublin')
    expect(begun).toMatchObject({ code: 0, err: '' })
    expect(begun.out).toContain('Own Coast has begun, with edition 1')
    const { actor, found } = await join(tokenIn(begun.out), 'lead@own.example')
    expect(found).toMatchObject({ inviter: 'Own Coast', clubName: null })
    expect(actor).toMatchObject({ programmeRoles: ['lead'], programme: { name: 'Own Coast', isDemo: false } })
    await expect(told(programme, 'Another', '--zone', 'UTC')).rejects.toThrow(/holds Own Coast already/)
  })

  it('gets its first club and head coach there too', async () => {
    const added = await told(club, 'Gull Point', '--for', 'Ines')
    expect(added).toMatchObject({ code: 0, err: '' })
    const { actor } = await join(tokenIn(added.out), 'head@own.example')
    expect(actor.clubs).toMatchObject([{ clubName: 'Gull Point', role: 'head', zone: 'Europe/Dublin' }])
    expect(await told(club, 'gull point')).toMatchObject({ code: 1 })
    expect(await told(invite, '--role', 'head')).toMatchObject({ code: 2 })
    expect(await told(invite, '--role', 'reviewer', '--club', 'Gull Point')).toMatchObject({ code: 2 })
    expect(await told(invite, '--role', 'head', '--club', 'Nowhere')).toMatchObject({ code: 1 })
    const second = await told(invite, '--role', 'assistant', '--club', 'Gull Point')
    const assistant = await join(tokenIn(second.out), 'assistant@own.example')
    expect(assistant.actor.clubs).toMatchObject([{ role: 'assistant' }])
    expect((await listClubs(scopeOf(assistant.actor, Date.now()))).map(({ name }) => name)).toEqual(['Gull Point'])
  })

  it('has a ledger from the first entry on, though nobody had an account then', async () => {
    const { rows } = await asRole('owner', (owner) => owner.query('SELECT "seq", "kind" FROM "Ledger" ORDER BY "seq"'))
    expect(rows.map(({ seq, kind }) => `${seq} ${kind}`)).toEqual([
      '1 edition published',
      '2 role changed',
      '3 role changed',
      '4 role changed',
    ])
  })
})
