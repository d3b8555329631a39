import { v7 as uuidv7 } from 'uuid'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { type Offer, refuseAcceptance } from '../../lib/access/invite'
import { invitedScopeOf } from '../../lib/access/scope'
import { prepareAccount } from '../../lib/access/store/accounts'
import { findActor } from '../../lib/access/store/actors'
import { addClub, listClubs } from '../../lib/access/store/clubs'
import { setCoachScope } from '../../lib/access/store/coach-scopes'
import {
  findInvitation,
  listOpenInvitations,
  makeInvitation,
  withdrawInvitation,
} from '../../lib/access/store/invitations'
import { findPost, listPosts } from '../../lib/access/store/posts'
import { acceptInvitation, endPost } from '../../lib/assessment/store/posts'
import { closeDatabase } from '../../lib/platform/db'
import { asRole } from '../support/database'
import { coachAs, dayLength, makeCoast, noon, officeAs, type PersonKey, type SmallCoast } from '../support/small-club'

let coast: SmallCoast
beforeAll(async () => {
  coast = await makeCoast()
})
afterAll(closeDatabase)

const now = () => Date.now()
const assistant = (club = coast.clubs.here): Offer => ({ role: 'assistant', club })
const invite = async (who: PersonKey, offer: Offer, at = now()) =>
  (await makeInvitation(await officeAs(coast, who, noon), offer, 'somebody', at)).token

async function accept(token: string, email: string, as?: string) {
  const found = await findInvitation(token)
  if (!found) throw new Error('no such invitation')
  const newcomer = as
    ? null
    : await prepareAccount({ email, name: 'Ines Vold', initials: 'IV', password: 'twelve letters' })
  const account = as ?? newcomer?.id ?? ''
  const outcome = await acceptInvitation(invitedScopeOf(account, found.programme, noon), found.hash, newcomer)
  return { account, outcome }
}

const roleChanges = () =>
  asRole('owner', async (owner) => {
    const { rows } = await owner.query<{ payload: string }>(
      `SELECT "payload" FROM "Ledger" WHERE "programmeId" = $1 AND "kind" = 'role changed' ORDER BY "seq"`,
      [coast.programme],
    )
    return rows.map(({ payload }) => JSON.parse(payload))
  })

describe('an invitation', () => {
  it('is kept as a hash, says who invites to what, and makes an account and a post once', async () => {
    const token = await invite('head', assistant())
    const stored = await asRole('owner', (owner) => owner.query('SELECT * FROM "Invitation"'))
    expect(JSON.stringify(stored.rows)).not.toContain(token)
    expect(await findInvitation(token)).toMatchObject({
      inviter: 'head',
      clubName: 'A club',
      offer: { role: 'assistant', club: coast.clubs.here },
    })
    const { account, outcome } = await accept(token, 'Ines@Coast.example')
    expect(outcome).toEqual({ ok: true })
    const actor = await findActor(account, account, noon)
    expect(actor).toMatchObject({ name: 'Ines Vold', clubs: [{ club: coast.clubs.here, role: 'assistant' }] })
    expect(await roleChanges()).toContainEqual(
      expect.objectContaining({ account, role: 'assistant', change: 'given', by: coast.people.head }),
    )
    expect((await accept(token, 'other@coast.example')).outcome).toEqual({ ok: false, because: 'closed' })
  })

  it('gives one of two who open it at once the post', async () => {
    const token = await invite('head', assistant())
    const both = await Promise.all([accept(token, 'one@coast.example'), accept(token, 'two@coast.example')])
    expect(both.map(({ outcome }) => outcome.ok).sort()).toEqual([false, true])
    const made = await asRole('owner', (owner) =>
      owner.query(`SELECT "email" FROM "Account" WHERE "email" IN ('one@coast.example', 'two@coast.example')`),
    )
    expect(made.rows).toHaveLength(1)
  })

  it('is closed when it was withdrawn or has run out, and makes nothing then', async () => {
    const withdrawn = await invite('head', assistant())
    const scope = await officeAs(coast, 'head', noon)
    const [open] = await listOpenInvitations(scope, now())
    expect(await withdrawInvitation(scope, open?.id ?? '', now())).toBe(true)
    expect(await withdrawInvitation(scope, open?.id ?? '', now())).toBe(false)
    const old = await invite('head', assistant(), now() - 15 * dayLength)
    for (const token of [withdrawn, old])
      expect((await accept(token, 'late@coast.example')).outcome).toEqual({ ok: false, because: 'closed' })
    const made = await asRole('owner', (owner) =>
      owner.query(`SELECT 1 FROM "Account" WHERE "email" = 'late@coast.example'`),
    )
    expect(made.rows).toEqual([])
  })

  it('takes no address twice: whoever has an account accepts with it', async () => {
    const token = await invite('head', assistant())
    expect((await accept(token, 'INES@coast.example')).outcome).toEqual({ ok: false, because: 'address taken' })
    expect((await accept(token, 'fresh@coast.example')).outcome).toEqual({ ok: true })
  })

  it('adds a role in another club to an account, and replaces one in the same club', async () => {
    const { account } = await accept(await invite('head', assistant()), 'two-clubs@coast.example')
    await accept(await invite('lead', { role: 'head', club: coast.clubs.there }), '', account)
    expect((await findActor(account, account, noon))?.clubs.map(({ club, role }) => [club, role])).toEqual([
      [coast.clubs.here, 'assistant'],
      [coast.clubs.there, 'head'],
    ])
    await accept(await invite('lead', { role: 'head', club: coast.clubs.here }), '', account)
    const actor = await findActor(account, account, noon)
    expect(actor?.clubs.map(({ role }) => role)).toEqual(['head', 'head'])
    expect((await roleChanges()).filter((event) => event.account === account && event.change === 'ended')).toEqual([
      expect.objectContaining({ club: coast.clubs.here, role: 'assistant' }),
    ])
    expect(actor && refuseAcceptance(actor, assistant(), coast.programme)).toMatch(/head coach of this club/)
  })

  it('is made by whom the database lets: a head coach for her assistants, the lead for the others', async () => {
    await expect(invite('head', assistant(coast.clubs.there))).rejects.toThrow()
    await expect(invite('head', { role: 'head', club: coast.clubs.here })).rejects.toThrow()
    await expect(invite('assistant', assistant())).rejects.toThrow()
    await expect(invite('reviewer', { role: 'reviewer', club: null })).rejects.toThrow()
    await expect(invite('lead', { role: 'reviewer', club: null })).resolves.toBeTruthy()
    await expect(invite('lead', { role: 'head', club: coast.clubs.there })).resolves.toBeTruthy()
  })

  it('is seen by its own club and the lead; its hash by nobody', async () => {
    await invite('head', assistant())
    const seenBy = async (who: PersonKey) =>
      (await listOpenInvitations(await officeAs(coast, who, noon), now())).filter(({ role }) => role === 'assistant')
    expect((await seenBy('head')).length).toBeGreaterThan(0)
    expect((await seenBy('lead')).length).toBeGreaterThan(0)
    for (const who of ['elsewhere', 'assistant', 'reviewer'] as const) expect(await seenBy(who)).toEqual([])
    await expect(asRole('app', async (client) => client.query('SELECT "tokenHash" FROM "Invitation"'))).rejects.toThrow(
      /permission denied/,
    )
  })
})

describe('a post', () => {
  it('is ended by the head coach of its club, told to the ledger, and by nobody else', async () => {
    const { account } = await accept(await invite('head', assistant()), 'leaving@coast.example')
    const posts = await listPosts(await officeAs(coast, 'head', noon), coast.clubs.here)
    const post = posts.find((one) => one.account === account)
    for (const who of ['elsewhere', 'assistant', 'reviewer'] as const)
      expect(await endPost(await officeAs(coast, who, noon), post?.id ?? '', now())).toBe(false)
    expect(await endPost(await officeAs(coast, 'head', noon), post?.id ?? '', now())).toBe(true)
    expect(await findActor(account, account, now())).toBeNull()
    expect(await roleChanges()).toContainEqual(
      expect.objectContaining({ account, change: 'ended', by: coast.people.head }),
    )
  })

  it('of a head coach is ended by the lead, not by another head coach nor by herself', async () => {
    const posts = await listPosts(await officeAs(coast, 'head', noon), coast.clubs.here)
    const second = posts.find((one) => one.account === coast.people.secondHead)
    for (const who of ['head', 'secondHead'] as const)
      expect(await endPost(await officeAs(coast, who, noon), second?.id ?? '', now())).toBe(false)
    expect(await endPost(await officeAs(coast, 'lead', noon), second?.id ?? '', now())).toBe(true)
  })

  it('exists for its own club and the programme only', async () => {
    const [post] = await listPosts(await officeAs(coast, 'elsewhere', noon), coast.clubs.there)
    expect(await findPost(await coachAs(coast, 'head', noon), post?.id ?? '')).toBeNull()
    expect(await findPost(await coachAs(coast, 'elsewhere', noon), post?.id ?? '')).toMatchObject({ role: 'head' })
    expect(await findPost(await officeAs(coast, 'lead', noon), post?.id ?? '')).toMatchObject({ role: 'head' })
  })

  it('has its scope set by the head coach for an assistant, by the lead for a head coach, never for oneself', async () => {
    const set = async (who: PersonKey, account: string, club = coast.clubs.here) =>
      setCoachScope(await officeAs(coast, who, noon), {
        account,
        club,
        families: ['forward'],
        places: ['1m'],
        until: null,
      })
    await set('head', coast.people.assistant)
    await set('lead', coast.people.head)
    await expect(set('head', coast.people.head)).rejects.toThrow()
    await expect(set('assistant', coast.people.assistant)).rejects.toThrow()
    await expect(set('elsewhere', coast.people.assistant)).rejects.toThrow()
    await expect(set('head', coast.people.elsewhere, coast.clubs.there)).rejects.toThrow()
    const posts = await listPosts(await officeAs(coast, 'head', noon), coast.clubs.here)
    expect(posts.find((one) => one.account === coast.people.assistant)?.judges).toEqual({
      families: ['forward'],
      places: ['1m'],
      until: null,
    })
  })
})

describe('a club', () => {
  it('is added by the lead, once under a name, and by nobody else', async () => {
    const lead = await officeAs(coast, 'lead', noon)
    const name = `Gull Point ${uuidv7().slice(-6)}`
    expect(await addClub(lead, { name, zone: 'UTC' })).toBeTruthy()
    expect(await addClub(lead, { name: name.toUpperCase(), zone: 'UTC' })).toBeNull()
    for (const who of ['reviewer', 'head'] as const)
      await expect(addClub(await officeAs(coast, who, noon), { name: 'Another', zone: 'UTC' })).rejects.toThrow()
    expect((await listClubs(lead)).map((club) => club.name)).toContain(name)
  })
})
