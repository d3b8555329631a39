import AxeBuilder from '@axe-core/playwright'
import type { Browser, Page } from '@playwright/test'
import { v7 as uuidv7 } from 'uuid'
import type { DeckSnapshot } from '../../lib/assessment/deck/contract'
import { indexEdition } from '../../lib/curriculum/edition/index-edition'
import { type Cove, closeCove, makeCove } from './support/cove'
import type { Demo } from './support/demo'
import { signInAs } from './support/people'
import { expect, test } from './support/test'

const pair = { skill: 'fall-in', place: 'poolside', atLevel: 'soundings' } as const
const key = 'fall-in@poolside'

async function coachAt(browser: Browser, demo: Demo, email: string): Promise<Page> {
  const page = await (await browser.newContext({ baseURL: demo.url })).newPage()
  await signInAs(page, demo, email)
  return page
}

/** Called attempts from a coach's device: each criterion rated the same but for the critical ones. */
async function dive(page: Page, diver: string, critical: readonly (0 | 1 | 2 | 3 | 4)[]): Promise<void> {
  const snapshot: DeckSnapshot = await (await page.request.get('/api/deck/snapshot')).json()
  const { document, hash } = snapshot.edition
  const criteria = indexEdition(document, hash).pairs.get(key)?.criteria ?? []
  const device = uuidv7()
  const now = Date.now()
  const call = uuidv7({ msecs: now - 60_000 })
  const at = { diver, ...pair, device }
  const dives = critical.flatMap((rating, index) => {
    const attempt = uuidv7({ msecs: now - 50_000 + index * 1000 })
    const rated = criteria.map(({ criterion }) => [criterion.key, criterion.critical ? rating : 4])
    return [
      {
        kind: 'attempt',
        id: attempt,
        ...at,
        call: { id: call, number: index + 1 },
        attemptedAt: now - 50_000 + index * 1000,
        setting: 'training',
        cued: false,
      },
      {
        kind: 'observation',
        id: uuidv7({ msecs: now - 40_000 + index * 1000 }),
        attempt,
        edition: hash,
        observedOn: 'deck',
        observedAt: now - 40_000 + index * 1000,
        ratings: Object.fromEntries(rated),
        restAsExpected: false,
        faults: [],
        note: null,
        moments: [],
        supersedes: null,
      },
    ]
  })
  const items = [{ kind: 'call', id: call, ...at, count: critical.length, calledAt: now - 60_000 }, ...dives]
  const answer = await page.request.post('/api/deck/sync', { data: { v: snapshot.v, sentAt: now, items } })
  const answers = (await answer.json()) as { result: string; message?: string }[]
  expect(answers.map(({ result, message }) => message ?? result)).toEqual(items.map(() => 'accepted'))
}

const headline = (page: Page) => page.getByRole('heading', { level: 1 })

test('a step is decided from the list with the keyboard; a doubt is listed, and cleared by the recheck', async ({
  browser,
  demo,
}) => {
  const cove: Cove = makeCove(demo)
  try {
    const assistant = await coachAt(browser, demo, cove.emails.assistant)
    const head = await coachAt(browser, demo, cove.emails.head)
    // Two coaches rate the first called attempts; the assistant signs.
    await dive(assistant, cove.diver, [4, 4])
    await dive(head, cove.diver, [4])
    await assistant.goto(`/desk/divers/${cove.diver}/${encodeURIComponent(key)}`)
    await assistant.getByRole('button', { name: 'Sign off' }).click()
    await expect(assistant.getByText('Kept, and written in the ledger.')).toBeVisible()

    await head.goto('/desk/queue')
    await expect(headline(head)).toHaveText('One step is ready for your decision.')
    const { violations } = await new AxeBuilder({ page: head }).analyze()
    expect(violations).toEqual([])
    const row = head.getByRole('listitem', { name: 'Sunniva Marsh, Soundings' })
    // The keys listen once the page has come alive.
    await expect(async () => {
      await head.keyboard.press('j')
      await expect(row).toBeFocused({ timeout: 300 })
    }).toPass()
    await head.keyboard.press('a')
    await expect(head.getByRole('button', { name: 'Approve', exact: true })).toBeFocused()
    await head.keyboard.press('Escape')
    await expect(row).toBeFocused()
    await head.keyboard.press('a')
    await head.keyboard.press('Enter')
    await expect(head.getByText('Approved, and written in the ledger.')).toBeVisible()
    await expect(headline(head)).toHaveText('Nobody waits for a decision.')

    // Something dangerous is seen: the sign-off is in doubt, the level to review; three clean dives clear both.
    await dive(assistant, cove.diver, [1])
    await head.goto('/desk/queue')
    await expect(head.getByRole('region', { name: 'In doubt' })).toContainText('Fall-in, standing')
    await expect(head.getByRole('region', { name: 'To review' })).toContainText('Soundings')
    await head.goto(`/desk/divers/${cove.diver}/${encodeURIComponent(key)}`)
    await expect(head.getByRole('region', { name: 'Signature' })).toContainText('In doubt since')
    await dive(assistant, cove.diver, [4, 4, 4])
    await head.reload()
    await expect(head.getByRole('region', { name: 'Signature' })).not.toContainText('In doubt')
    await head.goto('/desk/queue')
    await expect(head.getByRole('region', { name: 'In doubt' })).toHaveCount(0)
    await expect(head.getByRole('region', { name: 'To review' })).toHaveCount(0)
  } finally {
    await closeCove(demo, cove)
  }
})

test('without a script the same forms work: a signature is taken back in writing', async ({ browser, demo }) => {
  const cove: Cove = makeCove(demo)
  try {
    const context = await browser.newContext({ baseURL: demo.url, javaScriptEnabled: false })
    const page = await context.newPage()
    await signInAs(page, demo, cove.emails.head)
    await page.goto('/desk/queue')
    await expect(page.getByRole('region', { name: 'Ready' })).toBeVisible()
    await expect(page.getByRole('navigation', { name: 'Lists' })).toContainText('In doubt')
    await page.goto(`/desk/divers/${cove.diver}/${encodeURIComponent('line-up@floor')}`)
    await page.getByText('Take back…').click()
    await page.getByLabel('Why is it taken back?').fill('The clip shows another diver.')
    await page.getByRole('button', { name: 'Revoke the sign-off' }).click()
    await expect(page.getByText('Taken back, and written in the ledger with your reason.')).toBeVisible()
    await expect(page.getByRole('region', { name: 'Signature' })).toContainText('The clip shows another diver.')
  } finally {
    await closeCove(demo, cove)
  }
})
