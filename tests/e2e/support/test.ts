import { test as base } from '@playwright/test'
import { holdTurn } from './alone'
import { type Demo, getDemo } from './demo'

interface Options {
  /** Console errors that this test provokes; every other one fails it. */
  readonly expectedErrors: readonly RegExp[]
  /** No other test runs beside this one: for what can only be held on a machine that is quiet. */
  readonly alone: boolean
}

interface Fixtures {
  readonly demo: Demo
  readonly quietConsole: undefined
  readonly turn: undefined
}

/** Playwright's test against the served demo. An error in any page's console fails the test that saw it. */
export const test = base.extend<Options & Fixtures>({
  expectedErrors: [[], { option: true }],
  // biome-ignore lint/correctness/noEmptyPattern: Playwright reads the names of the fixtures from this pattern.
  demo: async ({}, use) => use(getDemo()),
  alone: [false, { option: true }],
  turn: [
    async ({ demo, alone }, use) => holdTurn(demo, alone, () => use(undefined)),
    // As long as the longest of the others may take, and again.
    { auto: true, timeout: 1_000_000 },
  ],
  baseURL: async ({ demo }, use) => use(demo.url),
  quietConsole: [
    async ({ context, expectedErrors }, use) => {
      const seen: string[] = []
      context.on('console', (message) => {
        if (message.type() === 'error') seen.push(`${message.text()} (${message.location().url})`)
      })
      context.on('weberror', (thrown) => seen.push(String(thrown.error().stack ?? thrown.error())))
      await use(undefined)
      const unexpected = seen.filter((text) => !expectedErrors.some((expected) => expected.test(text)))
      if (unexpected.length > 0) throw new Error(`Errors in the browser's console:\n${unexpected.join('\n')}`)
    },
    { auto: true },
  ],
})

export { expect } from '@playwright/test'
