import { expect, type Page } from '@playwright/test'
import pg from 'pg'
import type { Chance } from '../../../seed/demo/chance'
import type { Demo } from './demo'

/** What the coach saw the screen keep. */
export interface Rated {
  readonly ratings: Readonly<Record<string, number>>
  readonly rest: boolean
}

const dock = (page: Page) => page.getByRole('region', { name: 'Must be rated' })
export const keptLine = (page: Page) => page.getByText(/^Kept\./)

/** Marks each critical criterion of the attempt on the screen, by keys as with a keyboard; calls five attempts first where none are called. */
export async function mark(page: Page, chance: Chance): Promise<Rated['ratings']> {
  const call = page.getByRole('button', { name: 'Call 5' })
  await expect(call.or(dock(page))).toBeVisible()
  if (await call.isVisible()) await call.click()
  await expect(dock(page)).toBeVisible()
  const count = Number(/of (\d+)/.exec((await dock(page).textContent()) ?? '')?.[1] ?? 1)
  const ratings: Record<string, number> = {}
  for (let turn = 0; turn < count; turn++) {
    const criterion = (await dock(page).getAttribute('data-criterion')) ?? ''
    const rating = chance.between(0, 4)
    await page.keyboard.press(String(rating))
    ratings[criterion] = rating
    // Rating one brings up the next; the last one stays.
    if (turn < count - 1) await expect(dock(page)).not.toHaveAttribute('data-criterion', criterion)
  }
  return ratings
}

/** Keeps by the keyboard, and does not wait: a thumb so fast would be taken for one that tapped twice. */
export async function pressKeep(page: Page, rest: boolean): Promise<void> {
  await page.getByRole('button', { name: rest ? 'Rest as expected · keep' : 'Keep', exact: true }).press('Enter')
}

/** Rates one attempt and sees it kept. */
export async function rate(page: Page, chance: Chance): Promise<Rated> {
  const ratings = await mark(page, chance)
  const rest = chance.happens(0.5)
  await pressKeep(page, rest)
  await expect(keptLine(page)).toBeVisible()
  return { ratings, rest }
}

/** Waits until the server has everything. */
export const allSent = (page: Page) =>
  expect(page.getByRole('link', { name: /all sent/ })).toBeVisible({ timeout: 60_000 })

interface Row {
  readonly ratings: Record<string, number>
  readonly restAsExpected: boolean
  readonly callId: string
  readonly callNumber: number
}

/**
 * What the server has of a diver, in the order in which it was dived. The offset of a clock is measured with the time that a
 * batch was under way, longer than between two dives here: only the whole hours that a clock was wrong are put right.
 */
export async function listStored(demo: Demo, diver: string, skill: string): Promise<Row[]> {
  const client = new pg.Client({ connectionString: demo.database.owner })
  await client.connect()
  try {
    const { rows } = await client.query<Row>(
      `SELECT o."ratings", o."restAsExpected", a."callId", a."callNumber"
       FROM "Attempt" a LEFT JOIN "Observation" o ON o."attemptId" = a."id"
       WHERE a."diverId" = $1 AND a."skill" = $2
       ORDER BY a."attemptedAt" + interval '1 hour' * round((a."offsetMs" - first_value(a."offsetMs") OVER (ORDER BY a."receivedAt", a."id")) / 3600000.0)`,
      [diver, skill],
    )
    return rows
  } finally {
    await client.end()
  }
}

/** The server's record is what was rated: each once, in order, and each call numbered from 1 without a gap. */
export async function expectExactly(demo: Demo, diver: string, skill: string, rated: readonly Rated[]): Promise<void> {
  const stored = await listStored(demo, diver, skill)
  expect(stored.map(({ ratings, restAsExpected }) => ({ ratings, rest: restAsExpected }))).toEqual(rated)
  const numbers = new Map<string, number[]>()
  for (const { callId, callNumber } of stored) numbers.set(callId, [...(numbers.get(callId) ?? []), callNumber])
  for (const list of numbers.values()) expect(list).toEqual(list.map((_, index) => index + 1))
}
