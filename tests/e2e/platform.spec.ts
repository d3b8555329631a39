import { expect, test } from './support/test'

test('the health answer says that the database answers', async ({ request }) => {
  const answer = await request.get('/api/health')
  expect(answer.status()).toBe(200)
  expect(await answer.json()).toMatchObject({ status: 'ok', database: 'ok' })
})

test('a page carries the policy, and its scripts the nonce', async ({ page }) => {
  const answer = await page.goto('/account/sign-in')
  const policy = answer?.headers()['content-security-policy'] ?? ''
  expect(policy).toContain("frame-ancestors 'none'")
  const nonce = /'nonce-([^']+)'/.exec(policy)?.[1]
  expect(nonce).toBeTruthy()
  const nonces = await page
    .locator('script')
    .evaluateAll((scripts) => scripts.map((s) => (s as HTMLScriptElement).nonce))
  expect(new Set(nonces)).toEqual(new Set([nonce]))
})
