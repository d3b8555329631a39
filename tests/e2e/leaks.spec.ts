import type { APIRequestContext } from '@playwright/test'
import pg from 'pg'
import type { Demo } from './support/demo'
import { signInAs } from './support/people'
import { listRoutes } from './support/routes'
import { expect, test } from './support/test'

/**
 * What is open without a sign-in, and nothing else: a ninth fails here. An invitation says itself, to whoever holds its link;
 * guides are open as long as the lead says so, and name nobody.
 */
const open = [
  '/account/invited/[token]',
  '/account/sign-in',
  '/api/health',
  '/deck',
  '/guide/[programme]',
  '/guide/[programme]/[pair]',
  '/icon.svg',
  '/manifest.webmanifest',
]
async function query<Row extends pg.QueryResultRow>(demo: Demo, sql: string): Promise<Row[]> {
  const client = new pg.Client({ connectionString: demo.database.owner })
  await client.connect()
  try {
    return (await client.query<Row>(sql)).rows
  } finally {
    await client.end()
  }
}

interface Club {
  readonly programme: string
  readonly club: string
  readonly diver: string
  readonly head: string
  readonly squad: string
  /** An assistant's post. */
  readonly post: string
  readonly assistant: string
  readonly attempt: string
  readonly moment: string
}

/** Two clubs of the demo, a diver who is in each today, and a head coach who coaches there and nowhere else. */
async function listClubs(demo: Demo): Promise<Club[]> {
  return query<Club>(
    demo,
    `SELECT c."programmeId" AS programme, c."id" AS club, min(d."diverId"::text) AS diver, min(a."email") AS head, min(s."id"::text) AS squad,
       min(h."id"::text) AS post, min(b."email") AS assistant,
       (SELECT min(t."id"::text) FROM "Attempt" t WHERE t."clubId" = c."id") AS attempt,
       (SELECT min(v."id"::text) FROM "Moment" v WHERE v."clubId" = c."id") AS moment
     FROM "Club" c JOIN "DiverMembership" d ON d."clubId" = c."id" AND d."to" IS NULL
     JOIN "Squad" s ON s."clubId" = c."id"
     JOIN "Membership" h ON h."clubId" = c."id" AND h."role" = 'assistant' AND h."to" IS NULL
     JOIN "Account" b ON b."id" = h."accountId"
     JOIN "Membership" m ON m."clubId" = c."id" AND m."role" = 'head' AND m."to" IS NULL
     JOIN "Account" a ON a."id" = m."accountId"
     WHERE c."name" IN ('Harrow Point Divers', 'Saltmarsh Diving Club') AND (SELECT count(*) FROM "Membership" o WHERE o."accountId" = m."accountId" AND o."to" IS NULL) = 1
     GROUP BY c."id" ORDER BY c."name"`,
  )
}

const filled = (route: string, diver: string, programme = ''): string =>
  route
    .replace('[diver]', diver)
    .replace('[programme]', programme)
    .replace('[target]', encodeURIComponent('level:soundings'))
    .replace('[pair]', encodeURIComponent('101C@1m'))
    .replace('[family]', 'forward')

test.use({ expectedErrors: [/404|401/] })

test('nothing but the eight open addresses answers without a sign-in', async ({ request, demo }) => {
  const [club] = await listClubs(demo)
  const routes = listRoutes()
  expect(routes.length).toBeGreaterThan(8)
  const answering: string[] = []
  for (const route of routes) {
    const answer = await request.get(filled(route, club?.diver ?? '', club?.programme), { maxRedirects: 0 })
    const location = answer.headers().location ?? ''
    const gated =
      answer.status() === 401 ||
      answer.status() === 405 ||
      (answer.status() === 307 && location.startsWith('/account/sign-in'))
    if (!gated) answering.push(route)
  }
  expect(answering.sort()).toEqual([...open].sort())
  const posted = await request.post('/api/deck/sync', { data: { v: 1, sentAt: 0, items: [{}] } })
  expect(posted.status()).toBe(401)
})

/** What only reviewers and the lead may open. */
const regional = [
  '/region',
  '/region/list?of=level&figure=divers',
  '/api/region/export?of=level&by=club',
  '/api/region/export?of=moves&by=age',
]

test('the region is there for reviewers and the lead, and for no coach', async ({ browser, demo }) => {
  const [club] = await listClubs(demo)
  const office = demo.signIns.filter(({ role }) => role.startsWith('programme'))
  expect(office).toHaveLength(2)
  for (const [email, status] of [
    [club?.head ?? '', 404],
    [club?.assistant ?? '', 404],
    ...office.map(({ email }) => [email, 200] as const),
  ] as const) {
    const context = await browser.newContext({ baseURL: demo.url })
    await signInAs(await context.newPage(), demo, email)
    for (const path of regional)
      expect(`${path} ${(await context.request.get(path)).status()}`).toBe(`${path} ${status}`)
    await context.close()
  }
})

test("another club's diver does not exist on any address, and her own club gets in", async ({ browser, demo }) => {
  const clubs = await listClubs(demo)
  expect(clubs).toHaveLength(2)
  const about = listRoutes().filter((route) => route.includes('[diver]'))
  expect(about.length).toBeGreaterThan(2)
  for (const { club, head } of clubs) {
    const context = await browser.newContext({ baseURL: demo.url })
    const page = await context.newPage()
    await signInAs(page, demo, head)
    for (const other of clubs) {
      for (const route of about) {
        const answer = await context.request.get(filled(route, other.diver))
        expect(`${route} ${answer.status()}`).toBe(`${route} ${other.club === club ? 200 : 404}`)
      }
    }
    for (const other of clubs.filter((one) => one.club !== club))
      for (const path of [
        `/desk/video/${other.attempt}`,
        `/desk/moments/${other.moment}`,
        `/desk/moments/compare?moment=${other.moment}`,
      ])
        expect((await context.request.get(path)).status()).toBe(404)
    for (const route of regional) expect((await context.request.get(route)).status()).toBe(404)
    const snapshot = await (await context.request.get('/api/deck/snapshot')).text()
    for (const other of clubs) expect(snapshot.includes(other.diver)).toBe(other.club === club)
    await context.close()
  }
})

test("a club's people, squads, transfers and recognitions are its head coach's alone", async ({ browser, demo }) => {
  const clubs = await listClubs(demo)
  const routes = listRoutes()
  const own = ['/desk/people', '/desk/squads', '/desk/squads/new-divers', '/desk/recognise']
  for (const route of [...own, '/desk/transfers', '/desk/people/[post]', '/desk/squads/[squad]'])
    expect(routes).toContain(route)
  const get = async (email: string, ask: (request: APIRequestContext) => Promise<void>) => {
    const context = await browser.newContext({ baseURL: demo.url })
    await signInAs(await context.newPage(), demo, email)
    await ask(context.request)
    await context.close()
  }
  const statusOf = async (request: APIRequestContext, path: string) => `${path} ${(await request.get(path)).status()}`
  const of = ({ club, post, squad }: Club) => [
    ...own.map((path) => `${path}?club=${club}`),
    `/desk/people/${post}`,
    `/desk/squads/${squad}`,
  ]
  for (const { club, head, assistant } of clubs) {
    await get(head, async (request) => {
      for (const other of clubs)
        for (const path of of(other))
          expect(await statusOf(request, path)).toBe(`${path} ${other.club === club ? 200 : 404}`)
      expect(await statusOf(request, '/desk/transfers')).toBe('/desk/transfers 200')
      expect(await statusOf(request, '/region/clubs')).toBe('/region/clubs 404')
    })
    await get(assistant, async (request) => {
      for (const path of [...clubs.flatMap(of), '/desk/transfers', '/region/clubs'])
        expect(await statusOf(request, path)).toBe(`${path} 404`)
    })
  }
})

test('a session that was ended is worth nothing, wherever its token is', async ({ browser, demo }) => {
  const [club] = await listClubs(demo)
  const context = await browser.newContext({ baseURL: demo.url })
  const page = await context.newPage()
  await signInAs(page, demo, club?.head ?? '')
  const stolen = await context.storageState()
  await page.getByRole('button', { name: 'Sign out' }).click()
  await page.waitForURL('**/account/sign-in')
  const thief = await browser.newContext({ baseURL: demo.url, storageState: stolen })
  expect((await thief.request.get('/api/deck/snapshot')).status()).toBe(401)
  await thief.close()
  await context.close()
})
