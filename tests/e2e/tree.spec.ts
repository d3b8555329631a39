import AxeBuilder from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import type { Demo } from './support/demo'
import { signInAs } from './support/people'
import { expect, test } from './support/test'

const rules = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']

async function signInHead(page: Page, demo: Demo): Promise<void> {
  const head = demo.signIns.find(({ role }) => role === 'head coach')
  await signInAs(page, demo, head?.email ?? '')
}

/** The first diver of the club, and her tree. */
async function openTree(page: Page): Promise<void> {
  await page.goto('/desk/divers')
  await page.getByRole('main').getByRole('link').first().click()
  await page.getByRole('navigation', { name: 'Families' }).getByRole('link', { name: 'Forward' }).click()
  await expect(page.getByRole('region', { name: 'Forward, drawn' })).toBeVisible()
}

test('a family’s tree is drawn, and its list says the same', async ({ page, demo }) => {
  await signInHead(page, demo)
  await page.goto('/curriculum')
  await page.getByRole('link', { name: 'The Forward tree' }).click()
  const drawing = page.getByRole('region', { name: 'Forward, drawn' })
  const list = page.getByRole('region', { name: 'Forward, place by place' })
  await expect(drawing).toBeVisible()
  const hrefs = async (links: ReturnType<Page['locator']>) =>
    [...new Set(await links.evaluateAll((all) => all.map((link) => link.getAttribute('href') ?? '')))].sort()
  const listed = await hrefs(list.getByRole('link'))
  expect(listed.length).toBeGreaterThan(10)
  expect(await hrefs(drawing.locator('.tree-pair a, .tree-move a'))).toEqual(listed)
  await drawing.getByRole('link', { name: /^103B .* at 3 m/ }).click()
  await expect(page.getByRole('heading', { level: 1 })).toContainText('1½ somersaults, pike at 3 m')
})

test('every node of a diver’s tree is reached by keyboard and says how it stands', async ({ page, demo }) => {
  await signInHead(page, demo)
  await openTree(page)
  const drawing = page.getByRole('region', { name: 'Forward, drawn' })
  const nodes = await drawing.getByRole('link').evaluateAll((all) => all.map((link) => link.id))
  await drawing.focus()
  const reached: string[] = []
  for (const _ of nodes) {
    await page.keyboard.press('Tab')
    reached.push(await page.evaluate(() => document.activeElement?.id ?? ''))
  }
  expect(reached).toEqual(nodes)
  const unsaid = await drawing
    .locator('.tree-pair a')
    .evaluateAll((all) =>
      all
        .map((link) => link.getAttribute('aria-label') ?? '')
        .filter((said) => !/, (held|recognised|in doubt|lapsed|to sign|open|closed)[.]/.test(said)),
    )
  expect(unsaid).toEqual([])
})

for (const colorScheme of ['light', 'dark'] as const)
  test(`axe finds nothing in the trees, ${colorScheme}`, async ({ page, demo }) => {
    await page.emulateMedia({ colorScheme })
    await signInHead(page, demo)
    await openTree(page)
    for (const width of [390, 1440]) {
      await page.setViewportSize({ width, height: 900 })
      expect((await new AxeBuilder({ page }).withTags(rules).analyze()).violations).toEqual([])
      expect(await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)).toBeLessThanOrEqual(0)
    }
    await page.goto('/curriculum/tree/forward?at=101B@1m')
    // Of a label of several lines that the edge of the scrolled drawing cuts, axe reads the longer lines only.
    const drawing = page.getByRole('region', { name: 'Forward, drawn' })
    await expect.poll(() => drawing.evaluate((region) => region.scrollLeft)).toBeGreaterThan(0)
    await drawing.evaluate((region) => region.scrollTo(0, 0))
    expect((await new AxeBuilder({ page }).withTags(rules).analyze()).violations).toEqual([])
  })

test('a search finds a dive without its letter, and a misspelt criterion, without JavaScript', async ({
  browser,
  demo,
}) => {
  const context = await browser.newContext({ baseURL: demo.url, javaScriptEnabled: false })
  const page = await context.newPage()
  await signInHead(page, demo)
  await page.goto('/curriculum')
  await page.getByRole('searchbox', { name: 'Search skills, criteria and faults' }).fill('103')
  await page.getByRole('button', { name: 'Search' }).click()
  await page.getByRole('link', { name: 'Forward 1½ somersaults, pike: 3 m' }).click()
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Forward 1½ somersaults, pike at 3 m')
  await expect(page.getByText('difficulty 1.6 at 3 m')).toBeVisible()
  await page.getByRole('searchbox').fill('hands lokced')
  await page.getByRole('button', { name: 'Search' }).click()
  const criteria = page.getByRole('region', { name: 'Criteria' })
  await expect(criteria.getByText('Hands locked', { exact: false }).first()).toBeVisible()
  await criteria.getByRole('link').first().click()
  await expect(page).toHaveURL(/#[a-z-]+$/)
  await context.close()
})
