import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vitest/config'

const root = fileURLToPath(new URL('.', import.meta.url))

export default defineConfig({
  resolve: { alias: { '@': root } },
  test: {
    env: { TZ: 'Pacific/Chatham' },
    projects: [
      {
        extends: true,
        test: {
          name: 'unit',
          include: [
            'lib/**/*.test.ts',
            'app/**/*.test.ts',
            'seed/**/*.test.ts',
            'scripts/**/*.test.ts',
            'tests/{architecture,engine,standards,types}/**/*.test.ts',
          ],
        },
      },
    ],
  },
})
