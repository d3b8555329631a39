import { afterAll, describe, expect, it } from 'vitest'
import { readEdition } from '@/lib/curriculum/edition/publish'
import { lint } from '@/lib/curriculum/lint/lint'
import { lintCodes } from '@/lib/curriculum/lint/problem'
import { readCurriculumFolder } from '@/seed/read-curriculum'
import { listMutations } from '../support/lint-mutations'

const { document } = readCurriculumFolder('seed/curriculum')
if (document === null) throw new Error('the demo curriculum cannot be read')

/** Fewest changes tried of each kind, so that a mutation that finds nothing to change is noticed. */
const fewest = 4
/** Most changes tried of each kind, spread evenly over all that there are. */
const most = 300
const rates: string[] = []

const spread = <Item>(all: readonly Item[]): Item[] =>
  all.filter((_, index) => Math.floor((index * most) / all.length) !== Math.floor(((index - 1) * most) / all.length))

describe('the linter finds one wrong field in the demo curriculum', () => {
  it('which has none to begin with', () => {
    expect(lint(document)).toEqual([])
  })

  it.each(lintCodes)(
    '%s',
    (code) => {
      const all = listMutations(document, code)
      const tried = all.length > most ? spread(all) : all
      const missed = tried.filter((mutation) => !lint(mutation.make()).some((problem) => problem.code === code))
      const outOf = all.length > tried.length ? `, spread over ${all.length}` : ''
      rates.push(`${code.padEnd(24)} ${tried.length - missed.length} of ${tried.length}${outOf}`)
      expect(missed.map(({ what }) => what)).toEqual([])
      expect(tried.length).toBeGreaterThanOrEqual(fewest)
    },
    180_000,
  )

  it('and not because the schema would refuse the document anyway', () => {
    const everyHundredth = lintCodes.flatMap((code) =>
      listMutations(document, code).filter((_, index) => index % 100 === 0),
    )
    const refused = everyHundredth.filter((mutation) => !readEdition(mutation.make()).ok)
    expect(refused.map(({ what }) => what)).toEqual([])
  }, 180_000)
})

// The rate by kind is the result of this file; it is printed beside the verdict.
afterAll(() => process.stdout.write(`\nwrong fields found, by kind:\n${rates.map((rate) => `  ${rate}\n`).join('')}`))
