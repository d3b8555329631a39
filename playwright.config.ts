import { defineConfig } from '@playwright/test'
import { browserFlags, findBrowser } from './tests/support/browser'

export default defineConfig({
  testDir: 'tests/e2e',
  outputDir: 'test-results',
  globalSetup: './tests/e2e/support/serve-demo.ts',
  fullyParallel: true,
  workers: 2,
  retries: 0,
  forbidOnly: true,
  // A test walks through many pages, on two cores beside another one: this is for what hangs, and what is waited for in it says so
  // long before.
  timeout: 300_000,
  expect: { timeout: 10_000 },
  reporter: [['list']],
  use: {
    locale: 'en-GB',
    // Far from the clubs' own zone and from UTC: a day that is counted in the wrong one shows.
    timezoneId: 'Pacific/Chatham',
    trace: 'retain-on-failure',
    screenshot: 'only-on-failure',
    launchOptions: { executablePath: findBrowser(), args: browserFlags },
  },
})
