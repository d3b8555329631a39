import { describe, expect, it } from 'vitest'
import { isDataTable, lineCount, longFunctions, quantile, tooLong } from './sizes'
import { listSources, type Source } from './sources'

const sources = listSources()
const product = sources.filter(({ path }) => /^(app|lib|scripts|seed)\//.test(path) && !/\.test\.tsx?$/.test(path))
const sizes = product.map(lineCount)

describe('sizes of the product’s files', () => {
  it('half have at most 80 lines, nine in ten at most 220', () => {
    expect(quantile(sizes, 0.5)).toBeLessThanOrEqual(80)
    expect(quantile(sizes, 0.9)).toBeLessThanOrEqual(220)
  })

  it('none, a test neither, has more than 400, but for data tables', () => {
    expect(tooLong(sources, 400)).toEqual([])
  })

  it('a page has at most 120', () => {
    expect(
      tooLong(
        product.filter(({ path }) => path.endsWith('/page.tsx')),
        120,
      ),
    ).toEqual([])
  })

  it('an action has at most 30', () => {
    const actions = product.filter(({ path }) => path.endsWith('/actions.ts'))
    expect(actions.flatMap((source) => longFunctions(source, 30))).toEqual([])
  })
})

describe('the check itself', () => {
  const source = (text: string): Source => ({ path: 'lib/a.ts', text })
  const rows = Array.from({ length: 500 }, (_, row) => `  ${row},`).join('\n')

  it('counts lines and quantiles', () => {
    expect(lineCount(source('a\nb\n'))).toBe(2)
    expect(quantile([10, 1, 2, 3, 4, 5, 6, 7, 8, 9], 0.5)).toBe(5)
    expect(quantile([10, 1, 2, 3, 4, 5, 6, 7, 8, 9], 0.9)).toBe(9)
    expect(quantile([], 0.5)).toBe(0)
  })

  it('tells a table from code', () => {
    expect(isDataTable(source(`export const a = [\n${rows}\n] as const`))).toBe(true)
    expect(tooLong([source(`export const a = [\n${rows}\n]`)], 400)).toEqual([])
    expect(tooLong([source(`export const a = () => [\n${rows}\n]`)], 400)).toEqual(['lib/a.ts: 502 lines'])
  })

  it('finds a long action', () => {
    const body = Array.from({ length: 29 }, () => '  call()').join('\n')
    expect(longFunctions(source(`export async function sendAction() {\n${body}\n}`), 30)).toEqual([
      'lib/a.ts: sendAction has 31 lines',
    ])
  })
})
