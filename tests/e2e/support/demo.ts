import type { DatabaseUrls } from '../../../scripts/database/own-cluster'

/** What serve-demo.ts started, as every worker knows it. */
export interface Demo {
  readonly url: string
  readonly password: string
  readonly signIns: readonly { readonly role: string; readonly email: string; readonly note: string }[]
  readonly database: DatabaseUrls
  readonly stateFolder: string
}

/** Throws Error outside a run of the browser tests. */
export function getDemo(): Demo {
  const told = process.env.PLUMBLINE_E2E
  if (!told) throw new Error('The browser tests run through playwright.config.ts, whose global setup serves the demo.')
  return JSON.parse(told)
}
