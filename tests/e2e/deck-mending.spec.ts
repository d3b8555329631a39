import type { Page } from '@playwright/test'
import pg from 'pg'
import { chanceOf } from '../../seed/demo/chance'
import { closeCove, makeCove } from './support/cove'
import type { Demo } from './support/demo'
import { signInAs } from './support/people'
import { allSent, keptLine, mark, pressKeep } from './support/rater'
import { expect, test } from './support/test'

test.use({ viewport: { width: 390, height: 844 }, hasTouch: true })

interface Seen {
  readonly id: string
  readonly ratings: Readonly<Record<string, number>>
  readonly restAsExpected: boolean
  readonly supersedesId: string | null
}

/** What the server has of a diver, in the order in which it came. */
async function listSeen(demo: Demo, diver: string): Promise<Seen[]> {
  const client = new pg.Client({ connectionString: demo.database.owner })
  await client.connect()
  try {
    const { rows } = await client.query<Seen>(
      `SELECT o."id", o."ratings", o."restAsExpected", o."supersedesId"
       FROM "Observation" o JOIN "Attempt" a ON a."id" = o."attemptId"
       WHERE a."diverId" = $1 AND a."skill" = 'fall-in' ORDER BY o."receivedAt"`,
      [diver],
    )
    return rows
  } finally {
    await client.end()
  }
}

/** Signs in and rates one attempt, the rest as expected; what was rated. */
async function rateOne(page: Page, demo: Demo, email: string, diver: string): Promise<Record<string, number>> {
  await signInAs(page, demo, email)
  await page.goto(`/deck#/diver/${diver}/fall-in@poolside`)
  const calls = page.getByRole('heading', { name: 'How many of the next attempts count?' })
  await expect(calls).toBeVisible({ timeout: 20_000 })
  const ratings = await mark(page, chanceOf('mending'))
  await pressKeep(page, true)
  await expect(keptLine(page)).toBeVisible()
  return { ...ratings }
}

/** Takes a critical rating back by tapping it again, and the rest with it. */
async function takeBack(page: Page): Promise<string> {
  await page.getByRole('checkbox', { name: 'Rest as expected' }).uncheck()
  const dock = page.getByRole('region', { name: 'Must be rated' })
  const criterion = (await dock.getAttribute('data-criterion')) ?? ''
  await dock.locator('label', { has: page.locator('input:checked') }).click()
  await expect(dock.getByRole('radio', { checked: true })).toHaveCount(0)
  return criterion
}

const unrated = (page: Page) => page.getByRole('dialog', { name: 'Critical, and not rated yet' })

test('what a coach saw is corrected: critical criteria are rated or said to be unwatched, and it takes a reason', async ({
  page,
  demo,
}) => {
  const cove = makeCove(demo)
  try {
    const ratings = await rateOne(page, demo, cove.emails.assistant, cove.diver)
    await allSent(page)
    await page.goto('/deck#/seen')
    await page
      .getByRole('link', { name: /Sunniva/ })
      .first()
      .click()
    const correct = page.getByRole('button', { name: 'Correct it' })
    await expect(correct).toBeVisible()
    const criterion = await takeBack(page)
    await expect(page.getByText('counts when the head coach accepts it')).toBeVisible()
    // By the keyboard: a thumb so fast would be taken for a second tap.
    await correct.press('Enter')
    await unrated(page).getByRole('button', { name: 'Rate them' }).click()
    await expect(unrated(page)).toBeHidden()
    await correct.press('Enter')
    await unrated(page).getByRole('button', { name: 'Not watched · keep as incomplete' }).click()

    const why = page.getByRole('dialog', { name: 'Why do you correct it?' })
    await why.getByRole('button', { name: 'Keep the correction' }).click()
    await expect(why.getByText('Say in a few words why you correct it.')).toBeVisible()
    await why.getByRole('button', { name: 'Tapped the wrong number.' }).click()
    await why.getByRole('button', { name: 'Keep the correction' }).click()
    await expect(page.getByRole('link', { name: /Sunniva.*corrected/ })).toBeVisible()
    await allSent(page)
    const { [criterion]: _, ...left } = ratings
    const [first, second, ...more] = await listSeen(demo, cove.diver)
    expect(more).toEqual([])
    expect(first).toMatchObject({ ratings, restAsExpected: true, supersedesId: null })
    expect(second).toMatchObject({ restAsExpected: false, supersedesId: first?.id })
    expect(second?.ratings).toEqual(left)
  } finally {
    await closeCove(demo, cove)
  }
})

test('what the server refused is changed and sent again under its id', async ({ page, context, demo }) => {
  const cove = makeCove(demo)
  const refused: string[] = []
  let refuses = true
  await context.route('**/api/deck/sync', async (route) => {
    const batch = route.request().postDataJSON()
    const isSeen = ({ kind }: { kind: string }) => refuses && kind === 'observation'
    const seen = batch.items.filter(isSeen)
    const items = batch.items.filter((item: { kind: string }) => !isSeen(item))
    const others = items.length > 0 ? await route.fetch({ postData: JSON.stringify({ ...batch, items }) }) : null
    const answers = seen.map(({ id }: { id: string }) => {
      refused.push(id)
      return { id, result: 'refused', code: 'malformed', message: 'the rest was not as expected' }
    })
    await route.fulfill({ json: [...((await others?.json()) ?? []), ...answers] })
  })
  try {
    const ratings = await rateOne(page, demo, cove.emails.assistant, cove.diver)
    await page.getByRole('link', { name: /to mend/ }).click()
    await page.getByRole('region', { name: 'Needs mending' }).getByRole('link', { name: 'Change' }).click()
    await expect(page.getByText('The rest was not as expected.')).toBeVisible()
    const criterion = await takeBack(page)
    refuses = false
    await page.getByRole('button', { name: 'Send again' }).press('Enter')
    await unrated(page).getByRole('button', { name: 'Not watched · keep as incomplete' }).click()
    await expect(page.getByText('Nothing waits.')).toBeVisible()
    const { [criterion]: _, ...left } = ratings
    const [stored, ...more] = await listSeen(demo, cove.diver)
    expect(more).toEqual([])
    expect(stored).toMatchObject({ restAsExpected: false, supersedesId: null, id: refused[0] })
    expect(stored?.ratings).toEqual(left)
  } finally {
    await closeCove(demo, cove)
  }
})
