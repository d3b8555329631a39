import { execFile } from 'node:child_process'
import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { inRoot } from './paths.mjs'
import { countOf, playwrightCount, vitestCount } from './stages.mjs'

const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'plumbline-stages-'))
afterAll(() => fs.rmSync(folder, { recursive: true, force: true }))

const written = (text: string): string => {
  const file = path.join(folder, 'report.json')
  fs.writeFileSync(file, text)
  return file
}
const vitest = (ok: boolean, counts: Partial<Record<'Passed' | 'Failed' | 'Pending' | 'Todo', number>>) => {
  const { Passed = 0, Failed = 0, Pending = 0, Todo = 0 } = counts
  const report = { numPassedTests: Passed, numFailedTests: Failed, numPendingTests: Pending, numTodoTests: Todo }
  return countOf(ok, written(JSON.stringify(report)), vitestCount)
}
const playwright = (ok: boolean, counts: Record<string, number>, errors: unknown[] = []) => {
  const stats = { expected: 0, unexpected: 0, flaky: 0, skipped: 0, ...counts }
  return countOf(ok, written(JSON.stringify({ stats, errors })), playwrightCount)
}

describe('what a stage counts', () => {
  it('is what passed, when all did', () => {
    expect(vitest(true, { Passed: 7 })).toEqual({ passed: 7, failed: 0 })
    expect(playwright(true, { expected: 7 })).toEqual({ passed: 7, failed: 0 })
  })

  it('is a failure for each test that failed, was skipped or was left to do', () => {
    expect(vitest(false, { Passed: 7, Failed: 2 })).toEqual({ passed: 7, failed: 2 })
    expect(vitest(true, { Passed: 7, Pending: 1 })).toEqual({ passed: 7, failed: 1 })
    expect(vitest(true, { Passed: 7, Todo: 1 })).toEqual({ passed: 7, failed: 1 })
    expect(vitest(false, { Passed: 7, Failed: 1, Pending: 2, Todo: 3 })).toEqual({ passed: 7, failed: 6 })
    expect(playwright(false, { expected: 7, unexpected: 2 })).toEqual({ passed: 7, failed: 2 })
    expect(playwright(true, { expected: 7, skipped: 1 })).toEqual({ passed: 7, failed: 1 })
  })

  it('is a failure for a test that passed only when it was tried again', () => {
    expect(playwright(true, { expected: 7, flaky: 1 })).toEqual({ passed: 7, failed: 1 })
  })

  it('is a failure when nothing was run', () => {
    expect(vitest(true, {})).toEqual({ passed: 0, failed: 1 })
    expect(playwright(true, {})).toEqual({ passed: 0, failed: 1 })
  })

  it('is a failure when the runner says so and no test does', () => {
    expect(vitest(false, { Passed: 7 })).toEqual({ passed: 7, failed: 1 })
    expect(playwright(false, { expected: 7 })).toEqual({ passed: 7, failed: 1 })
  })

  it('is a failure for an error outside the tests, which those that failed may have caused', () => {
    expect(playwright(true, { expected: 7 }, [{}])).toEqual({ passed: 7, failed: 1 })
    expect(playwright(false, { expected: 7, unexpected: 2 }, [{}])).toEqual({ passed: 7, failed: 2 })
  })

  it('is a failure without a report, and with one that cannot be read or lacks a count', () => {
    const failed = { passed: 0, failed: 1 }
    expect(countOf(true, path.join(folder, 'none.json'), vitestCount)).toEqual(failed)
    expect(countOf(true, written('{"numPassed'), vitestCount)).toEqual(failed)
    expect(countOf(true, written('{}'), vitestCount)).toEqual(failed)
    const stats = { expected: 7, unexpected: 0, flaky: 0 }
    expect(countOf(true, written(JSON.stringify({ stats, errors: [] })), playwrightCount)).toEqual(failed)
    const withoutTodo = { numPassedTests: 7, numFailedTests: 0, numPendingTests: 0 }
    expect(countOf(true, written(JSON.stringify(withoutTodo)), vitestCount)).toEqual(failed)
  })
})

/** Runs a runner on a few tests in a folder of their own, and counts what it wrote. */
async function counted(name: string, program: string, args: string[], tests: string, read: typeof vitestCount) {
  const own = path.join(folder, name)
  fs.mkdirSync(own)
  fs.symlinkSync(inRoot('node_modules'), path.join(own, 'node_modules'))
  fs.writeFileSync(path.join(own, `${name}.test.mjs`), tests)
  const file = path.join(own, 'report.json')
  const env = { ...process.env, PLAYWRIGHT_JSON_OUTPUT_NAME: file }
  const command = [inRoot('node_modules', program), ...args, '--reporter=json']
  const ok = await new Promise<boolean>((resolve) =>
    execFile(process.execPath, command, { cwd: own, env }, (error) => resolve(error === null)),
  )
  return countOf(ok, file, read)
}

describe('what the runners really write', () => {
  const tests = `
    it('passes', () => {})
    it('fails', () => { throw new Error('as it should') })
    it.skip('is skipped', () => {})`

  it('is read as it is meant, of Vitest', async () => {
    const todo = `import { it } from 'vitest'\n${tests}\nit.todo('is left to do')`
    const args = ['run', '--outputFile=report.json']
    expect(await counted('unit', 'vitest/vitest.mjs', args, todo, vitestCount)).toEqual({ passed: 1, failed: 3 })
  })

  it('is read as it is meant, of Playwright', async () => {
    const flaky = `it.describe.configure({ retries: 1 }); it('passes later', ({}, { retry }) => { if (retry === 0) throw new Error('at first') })`
    const again = `import { test as it } from '@playwright/test'\nit.describe(() => {${tests}})\n${flaky}`
    const args = ['test', '--workers=1']
    const count = await counted('browser', '@playwright/test/cli.js', args, again, playwrightCount)
    expect(count).toEqual({ passed: 1, failed: 3 })
  })
})
