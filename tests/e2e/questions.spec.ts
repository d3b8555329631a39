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
const films = {
  own: '/media/clips/101b-sound.webm',
  page: 'https://films.invalid/watch?v=7',
  file: 'https://films.invalid/gone.mp4',
} as const

async function coachAt(browser: Browser, demo: Demo, email: string, scripts = true): Promise<Page> {
  const page = await (await browser.newContext({ baseURL: demo.url, javaScriptEnabled: scripts })).newPage()
  await signInAs(page, demo, email)
  return page
}

/** Called attempts that show everything, each with a moment, from a coach's device; the moments' ids. */
async function dive(page: Page, diver: string, links: readonly string[]): Promise<string[]> {
  const snapshot: DeckSnapshot = await (await page.request.get('/api/deck/snapshot')).json()
  const { document, hash } = snapshot.edition
  const criteria = indexEdition(document, hash).pairs.get(key)?.criteria ?? []
  const now = Date.now()
  const at = { diver, ...pair, device: uuidv7() }
  const call = { kind: 'call', id: uuidv7({ msecs: now - 60_000 }), ...at, count: links.length, calledAt: now - 60_000 }
  const moments = links.map((link) => ({ id: uuidv7(), link, start: 0.5, end: 1.5 }))
  const dives = moments.flatMap((moment, index) => {
    // So close that a dive sent after them comes after them, however soon it is sent.
    const time = now - 50_000 + index * 10
    const attempt = uuidv7({ msecs: time })
    const dived = { called: { id: call.id, number: index + 1 }, setting: 'training', cued: false }
    return [
      {
        ...{ kind: 'attempt', id: attempt, ...at, call: dived.called, attemptedAt: time },
        ...{ setting: dived.setting, cued: dived.cued },
      },
      {
        ...{ kind: 'observation', id: uuidv7({ msecs: time + 500 }), attempt, edition: hash, observedOn: 'deck' },
        ...{ observedAt: time + 500, restAsExpected: false, faults: [], note: null, supersedes: null },
        ratings: Object.fromEntries(criteria.map(({ criterion }) => [criterion.key, 4])),
        moments: [moment],
      },
    ]
  })
  const items = [call, ...dives]
  const answer = await page.request.post('/api/deck/sync', { data: { v: snapshot.v, sentAt: now, items } })
  const answers = (await answer.json()) as { result: string; message?: string }[]
  expect(answers.map(({ result, message }) => message ?? result)).toEqual(items.map(() => 'accepted'))
  return moments.map(({ id }) => id)
}

/** What waits until it is opened. */
function gate() {
  let open = (): void => {}
  const opened = new Promise<void>((resolve) => {
    open = resolve
  })
  return { open: () => open(), opened }
}

const progress = (page: Page) => page.getByRole('status', { name: 'Progress' })
const soundPage = async (page: Page) => expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([])
/** The keys listen once the page has come alive. */
const alive = (page: Page) => expect(page.getByRole('checkbox', { name: 'Work with keys' })).toBeChecked()
async function press(page: Page, name: string, role: 'link' | 'button' = 'button'): Promise<void> {
  await page.getByRole(role, { name, exact: true }).focus()
  await page.keyboard.press('Enter')
}
const summary = (page: Page, text: string) => page.locator('summary', { hasText: text })

test.use({ expectedErrors: [/ERR_|Failed to load/] })

test('all moments are gone through with the keyboard, one is questioned, answered, and named in the decision', async ({
  browser,
  demo,
}) => {
  const cove: Cove = makeCove(demo)
  try {
    const assistant = await coachAt(browser, demo, cove.emails.assistant)
    const head = await coachAt(browser, demo, cove.emails.head)
    await head.route('https://films.invalid/**', (route) => route.abort())
    const film = gate()
    await head.route('**/media/clips/**', async (route) => {
      await film.opened
      await route.continue()
    })
    const sent: string[] = []
    head.on('request', (request) => {
      if (request.method() === 'POST' && request.url().includes('/evidence')) sent.push(request.url())
    })
    const [, questioned] = await dive(assistant, cove.diver, [films.own, films.page])
    await dive(head, cove.diver, [films.file])
    await assistant.goto(`/desk/divers/${cove.diver}/${encodeURIComponent(key)}`)
    await assistant.getByRole('button', { name: 'Sign off' }).click()
    await expect(assistant.getByText('Kept, and written in the ledger.')).toBeVisible()

    await head.goto('/desk/queue')
    await alive(head)
    await head.keyboard.press('j')
    await head.keyboard.press('o')
    await expect(head.getByRole('heading', { level: 1 })).toHaveText('Sunniva is ready for Soundings.')
    await press(head, 'Look at the evidence (3 moments)', 'link')
    await expect(progress(head)).toHaveText('1 of 3')
    await expect(head.getByText('as: assistant of the cove, on deck')).toBeVisible()
    await expect(head.getByRole('table', { name: 'What was rated, by phase' })).toContainText(/entry/i)
    await alive(head)
    await expect(head.locator('video')).toHaveCount(1)
    await soundPage(head)
    // Pressed before the film shows, it accepts nothing; held, it accepts this moment and not the next.
    await head.keyboard.press('a')
    await head.keyboard.press('q')
    await expect(head.getByLabel('What you see otherwise')).toBeFocused()
    await head.keyboard.press('Escape')
    expect(sent).toEqual([])
    film.open()
    await expect
      .poll(() => head.locator('video').evaluate((one: HTMLVideoElement) => one.readyState))
      .toBeGreaterThan(1)
    await head.keyboard.down('a')
    await expect(progress(head)).toHaveText('2 of 3')
    await alive(head)
    await head.keyboard.down('a')
    await head.keyboard.down('a')
    await head.keyboard.up('a')
    await expect(head.locator('video')).toHaveCount(0)
    await expect(head.getByRole('link', { name: 'Open 0.5 s to 1.5 s at films.invalid' })).toBeVisible()
    await alive(head)
    await head.keyboard.press('q')
    await expect(head.getByLabel('What you see otherwise')).toBeFocused()
    expect(sent).toHaveLength(1)
    await head.keyboard.press('Escape')
    await expect(summary(head, 'Question…')).toBeFocused()
    await head.keyboard.press('q')
    await head.keyboard.type('Are the hands apart?')
    await head.keyboard.press('Tab')
    await head.keyboard.press('Enter')
    await expect(progress(head)).toHaveText('3 of 3')
    await alive(head)
    await head.keyboard.press('b')
    await expect(progress(head)).toHaveText('2 of 3')
    await expect(head.getByText(/^You questioned it on/)).toBeVisible()
    await alive(head)
    await head.keyboard.press('n')
    await expect(progress(head)).toHaveText('3 of 3')
    await alive(head)
    await head.keyboard.press('r')
    await expect(head.getByText('Evidence not reachable')).toBeVisible()
    await expect(head.getByText('Recorded as not reachable when looked at. It counts as before.')).toBeVisible()
    await expect(head.getByRole('button', { name: 'Accept', exact: true })).toHaveCount(0)
    // She may see it where it is: then she can say what she saw.
    const away = head.waitForEvent('popup')
    await head.getByRole('link', { name: 'Open 0.5 s to 1.5 s at films.invalid' }).click()
    await (await away).close()
    await expect(head.getByRole('button', { name: 'Accept', exact: true })).toBeVisible()
    await head.keyboard.press('n')
    const told = 'You are through. Of 3 moments you accepted 1 and questioned 1; 1 was not reachable when looked at.'
    await expect(head.getByText(told)).toBeVisible()
    await expect(head.getByRole('link', { name: 'Look at the evidence (3 moments, 1 not reachable)' })).toBeVisible()
    await expect(head.getByRole('region', { name: 'Questions about the evidence' })).toContainText(
      'Are the hands apart?',
    )
    await soundPage(head)

    // The coach finds it on her desk and answers.
    await assistant.goto('/desk/video')
    const asked = assistant.getByRole('region', { name: 'Questions on your moments' })
    await expect(asked).toContainText('Sunniva: Fall-in')
    await expect(asked).toContainText('“Are the hands apart?”')
    await expect(asked.getByRole('link', { name: 'Correct the rating' })).toBeVisible()
    await expect(asked.getByRole('link').first()).toHaveAttribute('href', `/desk/moments/${questioned}`)
    await summary(assistant, 'Answer…').focus()
    await assistant.keyboard.press('Enter')
    await assistant.keyboard.press('Tab')
    await assistant.keyboard.type('Together; the camera is low.')
    await assistant.keyboard.press('Tab')
    await assistant.keyboard.press('Enter')
    await expect(asked).toContainText('“Together; the camera is low.”')
    await soundPage(assistant)
    await assistant.goto(`/desk/moments/${questioned}`)
    await expect(assistant.getByRole('region', { name: 'Questions about it' })).toContainText('“Are the hands apart?”')

    // The page that was opened before the answer is stale; then the decision says what became of it.
    await summary(head, 'Approve…').focus()
    await head.keyboard.press('Enter')
    await expect(head.getByRole('radio', { name: 'The coach answered it' })).toHaveCount(0)
    await head.getByRole('radio', { name: 'I looked again, and it is settled' }).focus()
    await head.keyboard.press('Space')
    await press(head, 'Approve')
    await expect(head.getByText('What this rests on has changed since you opened it.')).toBeVisible()
    await head.reload()
    await expect(head.getByRole('region', { name: 'Questions about the evidence' })).toContainText('the camera is low')
    await summary(head, 'Approve…').focus()
    await head.keyboard.press('Enter')
    await head.getByRole('radio', { name: 'It is left open, and I say why' }).focus()
    await head.keyboard.press('Space')
    await press(head, 'Approve')
    await expect(head.getByText('Say why the question is left open.').first()).toBeVisible()
    await expect(head.getByRole('radio', { name: 'It is left open, and I say why' })).toBeChecked()
    await head.getByRole('radio', { name: 'The coach answered it' }).focus()
    await head.keyboard.press('Space')
    await press(head, 'Approve')
    await expect(head.getByText('Approved, and written in the ledger.')).toBeVisible()
    await head.goto(`/desk/queue/${cove.diver}/${encodeURIComponent('level:soundings')}`)
    await expect(head.getByRole('region', { name: 'Decided before' })).toContainText('was answered by the coach')
    await expect(head.getByRole('region', { name: 'Questions about the evidence' })).toHaveCount(0)
  } finally {
    await closeCove(demo, cove)
  }
})

test('without a script moments are accepted, and an incident is cleared straight from the list', async ({
  browser,
  demo,
}) => {
  const cove: Cove = makeCove(demo)
  try {
    const assistant = await coachAt(browser, demo, cove.emails.assistant)
    const head = await coachAt(browser, demo, cove.emails.head, false)
    await dive(assistant, cove.diver, [films.own, films.own])
    const dived = await coachAt(browser, demo, cove.emails.head)
    await dive(dived, cove.diver, [films.own])
    await assistant.goto(`/desk/divers/${cove.diver}/${encodeURIComponent(key)}`)
    await assistant.getByRole('button', { name: 'Sign off' }).click()
    await expect(assistant.getByText('Kept, and written in the ledger.')).toBeVisible()
    await head.goto(`/desk/queue/${cove.diver}/${encodeURIComponent('level:soundings')}`)
    await head.getByRole('link', { name: 'Look at the evidence (3 moments)' }).click()
    for (const at of [1, 2, 3]) {
      await expect(progress(head)).toHaveText(`${at} of 3`)
      await head.getByRole('button', { name: 'Accept', exact: true }).click()
    }
    await expect(head.getByText('You are through. Of 3 moments you accepted 3.')).toBeVisible()

    await assistant.goto(`/desk/divers/${cove.diver}/safety`)
    await summary(assistant, 'Record an incident').click()
    await assistant.getByLabel('What it was').selectOption('bad landing')
    await assistant.getByLabel('At what').selectOption(key)
    await assistant.getByRole('button', { name: 'Record it' }).click()
    await expect(assistant.getByText('Recorded: it pauses at once.', { exact: false })).toBeVisible()

    // With a script, by keys alone: the line opens the form of that incident, and she is back on her list.
    await dived.goto('/desk/queue')
    await alive(dived)
    await dived.keyboard.press('j')
    await dived.keyboard.press('o')
    await expect(dived.getByLabel('What was done about it, and why the diver may go on')).toBeFocused()
    await dived.keyboard.type('Looked at together; back to the fall from the side.')
    await dived.keyboard.press('Tab')
    await dived.keyboard.press('Enter')
    await expect(dived.getByText('Cleared, and written in the ledger.')).toBeVisible()
    await expect(dived).toHaveURL(/\/desk\/queue\?done=cleared$/)
    await expect(dived.getByRole('region', { name: 'Incidents' })).toHaveCount(0)
  } finally {
    await closeCove(demo, cove)
  }
})
