import AxeBuilder from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import { signInAs } from './support/people'
import { listRoutes, routeOf } from './support/routes'
import { expect, test } from './support/test'

const rules = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']

/** The deck has its own, `deck-screens.spec.ts`; an endpoint is no page; the start leads on. */
const elsewhere = (route: string): boolean =>
  route === '/' || route === '/deck' || /^\/api\/|\.(svg|webmanifest)$/.test(route)

const widthOver = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)

/** What is wrong with a page as it is shown: too wide on a phone, also with larger letters; no one heading; what axe finds. */
async function listFaults(page: Page): Promise<string[]> {
  const faults: string[] = []
  if ((await page.getByRole('heading', { level: 1 }).count()) !== 1) faults.push('not one heading of the first level')
  for (const size of ['', '20px']) {
    await page.evaluate((fontSize) => {
      document.documentElement.style.fontSize = fontSize
    }, size)
    const over = await widthOver(page)
    if (over > 0) faults.push(`${over} px wider than a phone${size && ' with larger letters'}`)
  }
  await page.evaluate(() => {
    document.documentElement.style.fontSize = ''
  })
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme })
    const axe = new AxeBuilder({ page })
    const { violations } = await (colorScheme === 'light'
      ? axe.withTags(rules)
      : axe.withRules(['color-contrast'])
    ).analyze()
    faults.push(...violations.map(({ id, nodes }) => `${colorScheme} ${id} ${nodes[0]?.html}`))
  }
  return faults
}

/** Follows links from where somebody starts, one page of each kind, and looks at each on a phone. */
async function walk(page: Page, start: string, routes: readonly string[]): Promise<Map<string, string[]>> {
  const seen = new Map<string, string[]>()
  const next = [start]
  for (let path = next.shift(); path !== undefined; path = next.shift()) {
    const route = routeOf(path.replace(/[?#].*/, ''), routes)
    if (!route || seen.has(route)) continue
    await page.goto(path)
    seen.set(
      route,
      (await listFaults(page)).map((fault) => `${path}: ${fault}`),
    )
    const links = await page
      .getByRole('link')
      .evaluateAll((all) => all.map((link) => link.getAttribute('href') ?? '').filter((href) => href.startsWith('/')))
    next.push(...links)
  }
  return seen
}

test.use({ viewport: { width: 390, height: 844 } })

/** What no link leads to in the demo: what is handed over, asked in a form, or there once something was recognised or filmed. */
const unlinked = [
  '/account/invited/[token]',
  '/account/sign-in',
  '/curriculum/search',
  '/desk/clips/[coach]/[day]',
  '/desk/recognise/[recognition]',
]
const ofRegion = (route: string): boolean => route.startsWith('/region')

for (const [role, start, mine] of [
  ['head coach', '/desk/queue', (route: string) => !ofRegion(route)],
  ['programme lead', '/region', ofRegion],
] as const)
  test(`a ${role} reaches every page by links; each fits a phone, in larger letters too, and axe finds nothing`, async ({
    page,
    demo,
  }) => {
    // Some thirty pages, each in two sizes of letters.
    test.setTimeout(900_000)
    const faults = (await page.goto('/account/sign-in')) ? await listFaults(page) : []
    await signInAs(page, demo, demo.signIns.find((one) => one.role === role)?.email ?? '')
    const routes = listRoutes().filter((route) => mine(route) && !elsewhere(route) && !unlinked.includes(route))
    const seen = await walk(page, start, routes)
    expect([...faults, ...[...seen.values()].flat()]).toEqual([])
    expect(routes.filter((route) => !seen.has(route))).toEqual([])
    expect(routes.length).toBeGreaterThan(2)
  })

test('the first stop of the keyboard leads past the head, and every stop of a page is seen', async ({ page, demo }) => {
  await signInAs(page, demo, demo.signIns.find(({ role }) => role === 'head coach')?.email ?? '')
  await page.goto('/desk/divers')
  await page.keyboard.press('Tab')
  const skip = page.getByRole('link', { name: 'To the content' })
  await expect(skip).toBeFocused()
  await expect(skip).toBeInViewport()
  for (let stop = 0; stop < 14; stop++) {
    await page.keyboard.press('Tab')
    const outline = await page.evaluate(() => {
      const { outlineStyle, outlineWidth } = getComputedStyle(document.activeElement ?? document.body)
      return outlineStyle === 'none' ? 0 : Number.parseFloat(outlineWidth)
    })
    expect(outline).toBeGreaterThanOrEqual(2)
  }
  await skip.focus()
  await page.keyboard.press('Enter')
  expect(await page.evaluate(() => document.activeElement?.id)).toBe('main')
})
