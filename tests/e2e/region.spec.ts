import AxeBuilder from '@axe-core/playwright'
import { signInAs } from './support/people'
import { expect, test } from './support/test'

test('the region is chosen, opened and followed to a diver without JavaScript', async ({ browser, demo }) => {
  const context = await browser.newContext({ baseURL: demo.url, javaScriptEnabled: false })
  const page = await context.newPage()
  const reviewer = demo.signIns.find(({ role }) => role === 'programme reviewer')
  await signInAs(page, demo, reviewer?.email ?? '')
  await page.goto('/region')
  const club = page.getByRole('combobox', { name: 'Club' })
  const name = 'Saltmarsh Diving Club'
  await club.selectOption(name)
  await page.getByRole('combobox', { name: 'Rows' }).selectOption('clubs')
  await page.getByRole('button', { name: 'Show' }).click()
  await expect(page).toHaveURL(/\/region\?club=[0-9a-f-]+&/)
  await expect(club).toHaveValue(/[0-9a-f-]+/)

  const levels = page.getByRole('table', { name: 'How divers stand to their next level' })
  await expect(levels.getByRole('rowheader')).toHaveText([name, 'all of these'])
  const number = levels.getByRole('link', { name: new RegExp(`^\\d+ divers: ${name}`) })
  const count = Number(await number.textContent())
  await number.click()
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(`${count} divers`)
  const divers = page.getByRole('main').getByRole('listitem')
  await expect(divers).toHaveCount(Math.min(count, 25))
  const first = divers.first().getByRole('link')
  const who = (await first.textContent())?.split(' ')[0] ?? ''
  await first.click()
  await expect(page.getByRole('heading', { level: 1 })).toContainText(who)
  await context.close()
})

for (const colorScheme of ['light', 'dark'] as const)
  test(`axe finds nothing in the region and its lists, ${colorScheme}`, async ({ page, demo }) => {
    await page.emulateMedia({ colorScheme })
    const reviewer = demo.signIns.find(({ role }) => role === 'programme reviewer')
    await signInAs(page, demo, reviewer?.email ?? '')
    for (const path of ['/region', '/region?by=age&family=forward', '/region/list?of=level&figure=divers']) {
      await page.goto(path)
      const { violations } = await new AxeBuilder({ page }).analyze()
      expect(violations.map(({ id, nodes }) => `${path} ${id}: ${nodes[0]?.html}`)).toEqual([])
    }
  })

test('a table is taken along as comma-separated values, with small figures withheld', async ({ page, demo }) => {
  const lead = demo.signIns.find(({ role }) => role === 'programme lead')
  await signInAs(page, demo, lead?.email ?? '')
  await page.goto('/region')
  const saved = page.waitForEvent('download')
  await page.getByRole('link', { name: 'next level, by club' }).click()
  const download = await saved
  expect(download.suggestedFilename()).toMatch(/^region-level-by-club-\d{4}-\d{2}-\d{2}\.csv$/)
  const answer = await page.request.get('/api/region/export?of=level&by=club')
  expect(answer.headers()['content-type']).toBe('text/csv; charset=utf-8; header=present')
  const lines = (await answer.text()).trim().split('\r\n')
  expect(lines[0]).toContain('as of,club,ready,near,held up')
  for (const line of lines.slice(1)) {
    const [day, , ...cells] = line.split(',')
    expect(day).toMatch(/^\d{4}-\d{2}-\d{2}$/)
    for (const cell of cells) if (cell !== 'withheld') expect(Number(cell)).toBeGreaterThanOrEqual(5)
  }
})
