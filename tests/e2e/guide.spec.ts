import AxeBuilder from '@axe-core/playwright'
import type { Browser, Page } from '@playwright/test'
import { closeCove, makeCove } from './support/cove'
import type { Demo } from './support/demo'
import { consentToExemplars, nameExemplar } from './support/exemplar'
import { film, filmLinks, shownAt } from './support/film'
import { closeOffice, makeOffice } from './support/office'
import { signInAs } from './support/people'
import { expect, test } from './support/test'

const rules = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']

const emailOf = (demo: Demo, role: string): string => demo.signIns.find((one) => one.role === role)?.email ?? ''

/** A floor drill, a dive, a twisting dive, a skill on the way to the board move: one of each kind of page. */
const kinds = ['shapes@floor', '401B@1m', '5132D@1m', '101C@3m'].map((key) => `/curriculum/${encodeURIComponent(key)}`)

const sheetsOf = async (page: Page): Promise<number> => {
  const pdf = await page.pdf({ format: 'A4', preferCSSPageSize: true })
  return pdf.toString('latin1').match(/\/Type\s*\/Page[^s]/g)?.length ?? 0
}

test('one level at a time on a phone, by links whose address holds it; all levels side by side where there is room', async ({
  browser,
  demo,
}) => {
  const context = await browser.newContext({ baseURL: demo.url, javaScriptEnabled: false })
  const page = await context.newPage()
  await signInAs(page, demo, emailOf(demo, 'head coach'))
  await page.setViewportSize({ width: 390, height: 844 })
  await page.goto('/curriculum/401B%401m')
  const asked = page.getByRole('region', { name: 'What is asked' })
  await expect(asked.getByText('Seat goes away, but low')).toBeVisible()
  await expect(asked.getByText('Legs finish long')).toBeHidden()
  await asked.getByRole('link', { name: 'Traverse and Offing' }).click()
  await expect(page).toHaveURL(/level=traverse/)
  await expect(asked.getByText('From Traverse on more is asked of “Hips rise up and away”')).toBeVisible()
  await expect(asked.getByText('Seat goes away, but low')).toBeHidden()
  await expect(asked.getByText('Legs finish long')).toBeVisible()
  await page.setViewportSize({ width: 1440, height: 900 })
  await expect(asked.getByText('Seat goes away, but low')).toBeVisible()
  await expect(asked.getByText('Legs finish long')).toBeVisible()
  const drill = page.getByRole('region', { name: 'Faults and corrections' }).getByRole('link', { name: 'Hips up' })
  await drill.first().click()
  await expect(page.getByRole('heading', { level: 1 })).toContainText('on the dry board')
  await context.close()
})

for (const colorScheme of ['light', 'dark'] as const)
  test(`axe finds nothing in the guides, ${colorScheme}`, async ({ page, demo }) => {
    await page.emulateMedia({ colorScheme })
    await signInAs(page, demo, emailOf(demo, 'head coach'))
    for (const path of kinds)
      for (const width of [390, 768, 1440]) {
        await page.setViewportSize({ width, height: 900 })
        await page.goto(path)
        await expect(page.getByRole('heading', { level: 1 })).toBeVisible()
        // Between the phone and the desk the page is the phone's, only wider.
        if (width !== 768)
          expect((await new AxeBuilder({ page }).withTags(rules).analyze()).violations, `${path} ${width}`).toEqual([])
        const over = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)
        expect(over, `${path} ${width}`).toBeLessThanOrEqual(0)
      }
  })

test('the guide of every skill at every place fits two sheets of A4', async ({ browser, demo }) => {
  test.setTimeout(900_000)
  // On paper nothing is pressed.
  const context = await browser.newContext({ baseURL: demo.url, javaScriptEnabled: false })
  const page = await context.newPage()
  await signInAs(page, demo, emailOf(demo, 'head coach'))
  await page.goto('/curriculum')
  const paths = await page
    .getByRole('main')
    .getByRole('link')
    .evaluateAll((all) => all.map((link) => link.getAttribute('href') ?? ''))
  const guides = [...new Set(paths)].filter((path) => /^\/curriculum\/[^/]+(%40|@)/.test(path))
  expect(guides.length).toBeGreaterThan(150)
  const long: string[] = []
  for (const path of guides) {
    await page.goto(path)
    const sheets = await sheetsOf(page)
    expect(sheets, path).toBeGreaterThan(0)
    if (sheets > 2) long.push(`${path}: ${sheets}`)
  }
  expect(long).toEqual([])
  await context.close()
})

/** A page of nobody, and what it says of itself to search engines and caches. */
async function openAs(browser: Browser, demo: Demo, path: string) {
  const context = await browser.newContext({ baseURL: demo.url })
  const page = await context.newPage()
  const answer = await page.goto(path)
  const status = answer?.status() ?? 0
  const robots = await page
    .locator('meta[name="robots"]')
    .evaluateAll((all) => all.map((one) => one.getAttribute('content')))
  const headers = answer?.headers() ?? {}
  const text = (await page.content()).toLowerCase()
  return { context, page, status, robots: robots.join(), headers, text }
}

test.describe('families', () => {
  test.use({ expectedErrors: [/404/] })

  test('read the guides without signing in while the lead says so, and nothing of anybody', async ({
    browser,
    page,
    demo,
  }) => {
    await signInAs(page, demo, emailOf(demo, 'programme lead'))
    await page.goto('/curriculum/401B%401m')
    const path = (await page.getByRole('link', { name: 'as families read it' }).getAttribute('href')) ?? ''
    expect(path).toMatch(/^\/guide\/[0-9a-f-]{36}\/401B%401m$/)

    const open = await openAs(browser, demo, path)
    expect(open.status).toBe(200)
    expect(open.robots).toContain('noindex')
    expect(open.headers['cache-control']).toMatch(/no-store/)
    expect(open.headers['content-security-policy']).toContain("frame-ancestors 'none'")
    await expect(open.page.getByRole('note')).toContainText('Do not attempt a dive from a page')
    await expect(open.page.getByRole('heading', { level: 1 })).toHaveText('Inward dive, pike at 1 m')
    // Coaches see films there whose consent reaches the programme; families do not.
    await expect(page.getByText(/^See it:/)).not.toHaveCount(0)
    await expect(open.page.getByText(/^See it:/)).toHaveCount(0)
    expect(open.text).not.toContain('thornquist')
    expect((await new AxeBuilder({ page: open.page }).withTags(rules).analyze()).violations).toEqual([])
    expect(await sheetsOf(open.page)).toBeLessThanOrEqual(2)
    // Every link leads to another open page, or to the sign-in.
    const links = await open.page
      .getByRole('link')
      .evaluateAll((all) => all.map((link) => link.getAttribute('href') ?? ''))
    expect(links.length).toBeGreaterThan(20)
    expect(links.filter((href) => !/^(#main$|\/$|\/guide\/|\/account\/sign-in$)/.test(href))).toEqual([])
    await open.page.getByRole('link', { name: 'Guides' }).click()
    await expect(open.page.getByRole('heading', { level: 1 })).toHaveText('What good looks like, dive by dive.')
    await open.page.getByRole('link', { name: /^1 m, 101B / }).click()
    await expect(open.page).toHaveURL(/101B/)
    await open.context.close()
    for (const wrong of [path.replace(/[0-9a-f]{4}\//, 'beef/'), '/guide/kelder', path.replace('401B', '409Z')]) {
      const missing = await openAs(browser, demo, wrong)
      expect(missing.status, wrong).toBe(404)
      await missing.context.close()
    }
  })

  test('play a film whose consent says everybody, and none that is for coaches', async ({ browser, page, demo }) => {
    const [coves, what] = [[makeCove(demo), makeCove(demo)], { skill: '201C', place: '1m', atLevel: 'plumb' }]
    const secrets: string[] = []
    try {
      for (const [index, cove] of coves.entries()) {
        const head = await (await browser.newContext({ baseURL: demo.url })).newPage()
        await signInAs(head, demo, cove.emails.head)
        const { own } = await film(head, cove.diver, { own: filmLinks.own }, { what })
        await consentToExemplars(head, cove.diver, index === 0 ? 'everybody' : 'programme')
        await nameExemplar(head, own)
        secrets.push(own, cove.diver, cove.name, 'Sunniva')
        await head.context().close()
      }
      await signInAs(page, demo, emailOf(demo, 'programme lead'))
      await page.goto('/curriculum/201C%401m')
      await expect(page.getByText(/^See it: 201C/)).toHaveCount(2)
      const path = (await page.getByRole('link', { name: 'as families read it' }).getAttribute('href')) ?? ''
      const family = await openAs(browser, demo, path)
      const seen = family.page.getByText(/^See it: 201C/)
      await expect(seen).toHaveCount(1)
      await seen.click()
      await expect(family.page.locator('video')).toHaveCount(1)
      await family.page.getByRole('button', { name: 'Play', exact: true }).click()
      await expect.poll(() => shownAt(family.page)).toBeGreaterThan(0.6)
      await expect(family.page.getByRole('link', { name: 'Its own page' })).toHaveCount(0)
      for (const secret of secrets) expect(family.text).not.toContain(secret.toLowerCase())
      await family.context.close()
    } finally {
      for (const cove of coves) await closeCove(demo, cove)
    }
  })

  test('find nothing before the lead opens them and after she closes them, and search engines only when she says so', async ({
    browser,
    page,
    demo,
  }) => {
    const office = makeOffice(demo)
    const list = `/guide/${office.programme}`
    const read = async (path: string) => {
      const answer = await openAs(browser, demo, path)
      await answer.context.close()
      return answer
    }
    try {
      await signInAs(page, demo, office.email)
      await page.goto('/curriculum')
      const families = page.getByRole('region', { name: 'For families' })
      const open = async (choice: 'Yes' | 'No: only') => {
        await families.getByText('Open…').click()
        await families.getByLabel(choice).check()
        await families.getByRole('button', { name: 'Open the guides to families' }).click()
        await expect(families.getByText(/Opened by Ottoline Farraday on /)).toBeVisible()
      }
      const close = async () => {
        await families.getByText('Close…').click()
        await families.getByRole('button', { name: 'Close the guides to families' }).click()
        await expect(families.getByText(/Closed by Ottoline Farraday on /)).toBeVisible()
      }
      await expect(families.getByText('Only who signs in reads the guides.')).toBeVisible()
      for (const path of [list, `${list}/401B%401m`]) expect((await read(path)).status).toBe(404)
      await open('Yes')
      await expect(families.getByText('search engines may list it', { exact: false })).toBeVisible()
      expect(await read(`${list}/401B%401m`)).toMatchObject({ status: 200, robots: 'index, follow' })
      await close()
      for (const path of [list, `${list}/401B%401m`]) {
        const answer = await read(path)
        expect(answer.status).toBe(404)
        expect(answer.text).not.toContain('inward dive')
      }
      await open('No: only')
      expect(await read(list)).toMatchObject({ status: 200, robots: 'noindex, nofollow' })
      expect((await new AxeBuilder({ page }).withTags(rules).analyze()).violations).toEqual([])
    } finally {
      await closeOffice(demo, office)
    }
  })
})

test('only the lead has the switch', async ({ page, demo }) => {
  await signInAs(page, demo, emailOf(demo, 'head coach'))
  await page.goto('/curriculum')
  await expect(page.getByRole('link', { name: 'this address' })).toBeVisible()
  await expect(page.getByText('Close…')).toHaveCount(0)
})
