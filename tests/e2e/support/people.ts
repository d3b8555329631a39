import type { Page } from '@playwright/test'
import type { Demo } from './demo'
import { expect } from './test'

/** Signs in through the page, as a person does. */
export async function signInAs(page: Page, demo: Demo, email: string): Promise<void> {
  await page.goto('/account/sign-in')
  await page.getByLabel('E-mail address').fill(email)
  await page.getByLabel('Password').fill(demo.password)
  await page.getByRole('button', { name: 'Sign in' }).click()
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible()
  await page.waitForURL((url) => url.pathname !== '/account/sign-in')
}
