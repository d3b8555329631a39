import { describe, expect, it } from 'vitest'
import { listPaths, listSources, readText } from './sources'
import { faultsOfPath, isBarrel } from './vocabulary'

const paths = listPaths()

describe('names and places', () => {
  it('follow the vocabulary', () => {
    expect(paths.filter((path) => !path.startsWith('tests/fixtures/')).flatMap(faultsOfPath)).toEqual([])
  })

  it('no file only hands on what others export', () => {
    expect(
      listSources()
        .filter(isBarrel)
        .map(({ path }) => path),
    ).toEqual([])
  })

  it.each(['lib/platform', 'lib/access', 'lib/curriculum', 'lib/assessment', 'lib/reports'])(
    '%s says in at most 40 lines what it is for',
    (module) => {
      expect(paths).toContain(`${module}/README.md`)
    },
  )

  it('each README of a module has at most 40 lines', () => {
    const long = paths.filter((path) => /^lib\/.+\/README\.md$/.test(path))
    expect(long.filter((path) => readText(path).trimEnd().split('\n').length > 40)).toEqual([])
  })
})

describe('the check itself', () => {
  it.each([
    'lib/assessment/utils/a.ts',
    'lib/assessment/date-helpers.ts',
    'lib/shared.ts',
    'lib/assessment/diveList.ts',
    'lib/assessment/Verdict.ts',
    'lib/assessment/dive_list.ts',
    'app/desk/queue.ts',
    'app/desk/queue-list.tsx',
    'src/a.ts',
  ])('refuses %s', (path) => expect(faultsOfPath(path)).toHaveLength(1))

  it.each([
    'app/desk/queue/[diver]/page.tsx',
    'app/desk/_components/queue-list.tsx',
    'app/deck/state/draft.ts',
    'prisma/migrations/0001_tables/migration.sql',
    'lib/assessment/README.md',
    'tests/support/database.setup.ts',
    'next.config.ts',
    '.ci/run',
  ])('takes %s', (path) => expect(faultsOfPath(path)).toEqual([]))

  it('knows a barrel', () => {
    expect(isBarrel({ path: 'lib/a/index.ts', text: 'export const a = 1' })).toBe(true)
    expect(isBarrel({ path: 'lib/a/all.ts', text: `export * from './b'\nexport { c } from './c'` })).toBe(true)
    expect(isBarrel({ path: 'lib/a/b.ts', text: `export { c } from './c'\nexport const d = 1` })).toBe(false)
  })
})
