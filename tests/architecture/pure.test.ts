import { describe, expect, it } from 'vitest'
import { environmentReads, impurities, isPure, undocumentedExports } from './pure'
import { listSources } from './sources'

const sources = listSources()
const pure = sources.filter(({ path }) => isPure(path))

// Launchers and configuration, and what the tests start, stand outside the application.
const mayReadEnvironment = /^lib\/platform\/env\.ts$|^[^/]+\.config\.ts$|^scripts\/|^tests\/(e2e\/)?support\//

describe('modules of rules', () => {
  it('are there', () => expect(pure.length).toBeGreaterThan(20))

  it('know no clock, no chance and no outside, and never wait', () => {
    expect(pure.flatMap(impurities)).toEqual([])
  })

  it('say what each export means', () => {
    expect(pure.flatMap(undocumentedExports)).toEqual([])
  })
})

it('the environment is read in one place', () => {
  const elsewhere = sources.filter(({ path }) => !mayReadEnvironment.test(path))
  expect(elsewhere.flatMap(environmentReads)).toEqual([])
})

describe('the check itself', () => {
  const faultsOf = (text: string) => impurities({ path: 'lib/curriculum/a.ts', text })

  it.each([
    'export const now = () => new Date()',
    'const today = Date()',
    'const at = Date.now()',
    'const clock = Date.now',
    'const chance = Math.random() < 0.5',
    'export async function f() {}',
    'const f = async () => {}',
    'const home = process.env.HOME',
    'const later = setTimeout',
    'fetch("https://club.example")',
    'const width = window.innerWidth',
    'console.log(1)',
    `import { randomUUID } from 'node:crypto'`,
  ])('finds: %s', (text) => expect(faultsOf(text)).not.toEqual([]))

  it.each([
    'const at = new Date(0).toISOString()',
    'const day = Date.UTC(2026, 0, 1)',
    'interface Window { readonly document: string; readonly process: string }',
    'const edition = { document: 1 }; const text = edition.document',
    'const read = (document: { readonly levels: number }) => document.levels',
    `import { createHash } from 'node:crypto'`,
  ])('lets pass: %s', (text) => expect(faultsOf(text)).toEqual([]))

  it.each([
    'const a = process.env.A',
    'const a = globalThis.process.env',
    'const { env } = process',
    `import { env } from 'node:process'`,
  ])('finds the environment in: %s', (text) => {
    expect(environmentReads({ path: 'app/a.ts', text })).toHaveLength(1)
  })

  it('finds an export without a sentence, and not one that is kept inside', () => {
    const text =
      '/** Says so. */\nexport const a = 1\nexport const b = 2\n// Not a sentence.\nexport type C = 1\nconst d = 3\nexport type E = z.infer<typeof a>'
    expect(undocumentedExports({ path: 'lib/reports/a.ts', text })).toEqual([
      'lib/reports/a.ts:3 export const b = 2',
      'lib/reports/a.ts:5 export type C = 1',
    ])
  })
})
