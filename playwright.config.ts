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
  timeout: 60_000,
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
