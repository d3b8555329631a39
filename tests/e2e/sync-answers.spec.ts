import { signInAs } from './support/people'
import { expect, test } from './support/test'

test.use({ expectedErrors: [/400|401|403|413/] })

test('a batch that is none is answered in words, and nothing of it is kept', async ({ page, demo }) => {
  const assistant = demo.signIns.find(({ role }) => role === 'assistant coach')
  await signInAs(page, demo, assistant?.email ?? '')
  const post = (data: string, headers: Record<string, string> = {}) =>
    page.request.post('/api/deck/sync', {
      data: Buffer.from(data),
      headers: { 'content-type': 'application/json', ...headers },
    })
  const told = async (answer: Awaited<ReturnType<typeof post>>) => [answer.status(), (await answer.json()).message]

  expect(await told(await post('{ "v": 1, '))).toEqual([400, 'The batch is not JSON. Nothing of it was kept.'])
  const many = JSON.stringify({ v: 1, sentAt: 0, items: Array.from({ length: 51 }, () => ({})) })
  expect(await told(await post(many))).toEqual([400, expect.stringContaining('at most 50 items')])
  expect(await told(await post(JSON.stringify({ v: 2, sentAt: 0, items: [{}] })))).toEqual([
    400,
    expect.stringContaining('"v"'),
  ])
  const large = JSON.stringify({ v: 1, sentAt: 0, items: [{ note: 'x'.repeat(300_000) }] })
  expect(await told(await post(large))).toEqual([413, expect.stringContaining('256 kB')])
  for (const origin of ['https://elsewhere.example', 'null']) {
    const stranger = await post(JSON.stringify({ v: 1, sentAt: 0, items: [{}] }), { origin })
    expect(stranger.status(), origin).toBe(403)
  }
  const other = await post(JSON.stringify({ v: 1, sentAt: 0, items: [{}] }), {
    'x-deck-coach': '00000000-0000-7000-8000-000000000000',
  })
  expect(other.status()).toBe(401)

  const answer = await post(JSON.stringify({ v: 1, sentAt: Date.now(), items: [{ kind: 'attempt', id: 'x' }] }))
  expect(answer.status()).toBe(200)
  expect(await answer.json()).toMatchObject([{ id: 'x', result: 'refused', code: 'malformed' }])
})
