import { describe, expect, it } from 'vitest'
import manifest from '../../package.json'
import { areaOf, forbiddenImports, idlePackages, importCircles } from './check-imports'
import { listImports } from './imports'
import { listPaths, listSources, readText, type Source } from './sources'

const sources = listSources()
const imports = listImports(sources)
const check = (...files: [path: string, text: string][]) =>
  listImports(files.map(([path, text]): Source => ({ path, text })))

describe('who imports whom', () => {
  it('every source belongs to an area', () => {
    expect(sources.map(({ path }) => path).filter((path) => areaOf(path) === null)).toEqual([])
  })

  it('follows the table', () => {
    expect(imports.length).toBeGreaterThan(100)
    expect(forbiddenImports(imports)).toEqual([])
  })

  it('names no package that nothing imports, and installs none that nothing names', () => {
    expect(idlePackages(imports)).toEqual([])
    // Types are the compiler's, and the client is for what is generated from the schema.
    const unseen = /^@types\/|^@prisma\/client$/
    const texts = listPaths()
      .filter((path) => /\.(tsx?|mjs|css)$/.test(path))
      .map(readText)
    const isNamed = (name: string) => texts.some((text) => new RegExp(`['"@/]${name}['"/]`).test(text))
    const installed = Object.keys({ ...manifest.dependencies, ...manifest.devDependencies })
    expect(installed.filter((name) => !unseen.test(name) && !isNamed(name))).toEqual([])
  })

  it('has no circles', () => {
    expect(importCircles(imports)).toEqual([])
  })
})

describe('the check itself', () => {
  it.each([
    ['lib/curriculum/a.ts', `import { b } from '../assessment/b'`],
    ['lib/curriculum/a.ts', `import type { B } from '../assessment/b'`],
    ['lib/curriculum/a.ts', `export { b } from './store/b'`],
    ['lib/assessment/readiness/a.ts', `const b = import('@/lib/reports/b')`],
    ['lib/assessment/a.ts', `type B = import('../access/actor').Actor`],
    ['lib/assessment/a.ts', `import fs from 'node:fs'`],
    ['lib/assessment/a.ts', `import React from 'react'`],
    ['lib/assessment/store/a.ts', `import { scopeOf } from '../../access/scope'`],
    ['lib/reports/a.ts', `import pg from 'pg'`],
    ['lib/platform/clock.ts', `import pg from 'pg'`],
    ['lib/access/can.ts', `import { getEnv } from '../platform/env'`],
    ['app/desk/loader.ts', `import { asAccount } from '@/lib/platform/db'`],
    ['app/desk/page.tsx', `import { readDesk } from '@/lib/assessment/store/reads'`],
    ['app/desk/page.tsx', `import { evaluate } from '@/lib/assessment/readiness/evaluate'`],
    ['app/desk/page.tsx', `import { type Finding, evaluate } from '@/lib/assessment/readiness/evaluate'`],
    ['app/_components/ui/a.tsx', `import type { Status } from '@/lib/assessment/readiness/finding'`],
    ['app/_components/domain/a/a.tsx', `import Link from 'next/link'`],
    ['app/_components/domain/a/a.tsx', `import { evaluate } from '@/lib/assessment/readiness/evaluate'`],
    ['app/desk/_components/a.tsx', `import { measureTaken } from '@/lib/assessment/measure/take'`],
    ['lib/assessment/measure/a.ts', `import { evaluate } from '../readiness/evaluate'`],
    ['app/deck/a.ts', `import type { Actor } from '@/lib/access/actor'`],
    ['lib/curriculum/a.ts', `import { b } from '../../tests/support/b'`],
    ['lib/curriculum/a.ts', `import { b } from '@/seed/b'`],
  ])('%s: %s', (path, text) => {
    expect(forbiddenImports(check([path, text]))).toHaveLength(1)
  })

  it.each([
    ['lib/assessment/a.ts', `import { b } from '../curriculum/b'`],
    ['lib/assessment/store/a.ts', `import type { Scope } from '../../access/scope'`],
    ['app/desk/page.tsx', `import { type Finding } from '@/lib/assessment/readiness/finding'`],
    ['app/desk/page.tsx', `import { say } from '@/lib/assessment/readiness/wording'`],
    ['app/_components/domain/a/a.tsx', `import { measureTaken } from '@/lib/assessment/measure/take'`],
    ['app/desk/loader.ts', `import { readDesk } from '@/lib/assessment/store/reads'`],
    ['lib/platform/db.ts', `import pg from 'pg'`],
    ['lib/curriculum/a.test.ts', `import fs from 'node:fs'`],
  ])('lets %s have %s', (path, text) => {
    expect(forbiddenImports(check([path, text]))).toEqual([])
  })

  it.each([`import { a } from './a'`, `import type { A } from './a'`])('finds a circle that %s closes', (last) => {
    const closed = check(
      ['lib/curriculum/a.ts', `import { b } from './b'`],
      ['lib/curriculum/b.ts', `export { c } from './c'`],
      ['lib/curriculum/c.ts', last],
    )
    expect(importCircles(closed)).toEqual([
      ['lib/curriculum/a.ts', 'lib/curriculum/b.ts', 'lib/curriculum/c.ts', 'lib/curriculum/a.ts'],
    ])
  })

  it('finds none in a line of imports', () => {
    expect(importCircles(check(['lib/curriculum/a.ts', `import { b } from './b'`]))).toEqual([])
  })
})
