import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vitest/config'

const root = fileURLToPath(new URL('.', import.meta.url))

export default defineConfig({
  resolve: { alias: { '@': root } },
  test: {
    // Far from the clubs' own zone and from UTC: a day that is counted in the wrong one shows.
    env: { TZ: 'Pacific/Chatham' },
    restoreMocks: true,
    allowOnly: false,
    projects: [
      {
        extends: true,
        test: { name: 'architecture', include: ['tests/architecture/**/*.test.ts'], testTimeout: 60_000 },
      },
      {
        extends: true,
        test: {
          name: 'unit',
          include: [
            '{lib,app,seed,scripts}/**/*.test.{ts,tsx}',
            'tests/{engine,standards,types,support}/**/*.test.{ts,tsx}',
          ],
          testTimeout: 60_000,
        },
      },
      {
        extends: true,
        test: {
          name: 'integration',
          include: ['tests/integration/**/*.test.ts'],
          globalSetup: ['tests/support/cluster.global.ts'],
          setupFiles: ['tests/support/database.setup.ts'],
          maxWorkers: 2,
          testTimeout: 60_000,
          hookTimeout: 60_000,
        },
      },
    ],
  },
})
