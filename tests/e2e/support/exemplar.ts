import { expect, type Page } from '@playwright/test'

/** On the page of safety and consent: the consent to exemplars. */
export const exemplarConsent = (head: Page) =>
  head
    .getByRole('region', { name: 'Consent' })
    .getByRole('listitem')
    .filter({ hasText: 'To show moments as exemplars' })

/** Records it for the first time, for those of the choice's `value`. */
export async function consentToExemplars(
  head: Page,
  diver: string,
  reach: 'club' | 'programme' | 'everybody' = 'club',
): Promise<void> {
  await head.goto(`/desk/divers/${diver}/safety`)
  const exemplar = exemplarConsent(head)
  await exemplar.getByText('Record it').click()
  await exemplar.getByLabel('Who may see them').selectOption(reach)
  await exemplar.getByLabel('Who gives it').fill('Her father, in writing')
  await exemplar.getByRole('button', { name: 'Record the consent' }).click()
  await expect(exemplar.getByText('Withdraw it')).toBeVisible()
}

/** On a moment's page: where it is named. */
export const naming = (head: Page) => head.getByRole('region', { name: 'As an exemplar' })

/** Names a moment as showing the first criterion that is offered, or the one of a `value`, at the level that is offered. */
export async function nameExemplar(head: Page, moment: string, shows: string | { index: number } = { index: 1 }) {
  await head.goto(`/desk/moments/${moment}`)
  await naming(head).getByLabel('What it shows').selectOption(shows)
  await naming(head).getByRole('button', { name: 'Name it as an exemplar' }).click()
  await expect(naming(head).getByText('Withdraw it')).toBeVisible()
}
