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
const rates: string[] = []

describe('the linter finds one wrong field in the demo curriculum', () => {
  it('which has none to begin with', () => {
    expect(lint(document)).toEqual([])
  })

  it.each(lintCodes)(
    '%s',
    (code) => {
      const tried = listMutations(document, code)
      const missed = tried.filter((mutation) => !lint(mutation.document).some((problem) => problem.code === code))
      rates.push(`${code.padEnd(24)} ${tried.length - missed.length} of ${tried.length}`)
      expect(missed.map(({ what }) => what)).toEqual([])
      expect(tried.length).toBeGreaterThanOrEqual(fewest)
    },
    60_000,
  )

  it('and not because the schema would refuse the document anyway', () => {
    const everyTenth = lintCodes.flatMap((code) => listMutations(document, code).filter((_, index) => index % 10 === 0))
    const refused = everyTenth.filter((mutation) => !readEdition(mutation.document).ok)
    expect(refused.map(({ what }) => what)).toEqual([])
  }, 60_000)
})

// The rate by kind is the result of this file; it is printed beside the verdict.
afterAll(() => process.stdout.write(`\nwrong fields found, by kind:\n${rates.map((rate) => `  ${rate}\n`).join('')}`))
