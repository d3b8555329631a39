import { spawn } from 'node:child_process'
import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { inRoot, root } from './paths.mjs'

/**
 * The stages of `npm test`. A stage without tests of its own, such as the type check, counts as one.
 * @typedef {{ passed: number, failed: number }} Count
 * @typedef {{ name: string, work: (env: NodeJS.ProcessEnv) => Promise<Count> }} Stage
 */

/** @param {string} program below node_modules @param {string[]} args @param {NodeJS.ProcessEnv} env @returns {Promise<boolean>} */
const runTool = (program, args, env) =>
  new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [inRoot('node_modules', program), ...args], {
      cwd: root,
      env,
      stdio: ['ignore', 'inherit', 'inherit'],
    })
    child.on('error', reject)
    child.on('exit', (code) => resolve(code === 0))
  })

/** @param {boolean} ok @returns {Count} */
const asOne = (ok) => ({ passed: ok ? 1 : 0, failed: ok ? 0 : 1 })

/** @param {string} file @returns {any} what a runner wrote; null when it did not come to it */
function reportIn(file) {
  try {
    return JSON.parse(fs.readFileSync(file, 'utf8'))
  } catch {
    return null
  }
}

/**
 * Counts what a test runner wrote as JSON. A run that failed without a failed test (a file that does not load, a set-up that
 * throws) is a failure too, and a run of nothing is no success; nor is one whose report is missing or lacks a count.
 * @param {boolean} ok @param {string} file @param {(report: any) => Count} read @returns {Count}
 */
export function countOf(ok, file, read) {
  const report = reportIn(file)
  const { passed, failed } = report ? read(report) : asOne(false)
  if (!Number.isInteger(passed) || !Number.isInteger(failed)) return asOne(false)
  return { passed, failed: failed > 0 ? failed : ok && passed > 0 ? 0 : 1 }
}

/** A test that was skipped or left to do proves nothing: it counts as failed. @param {any} report @returns {Count} */
export const vitestCount = (report) => ({
  passed: report.numPassedTests,
  failed: report.numFailedTests + report.numPendingTests + report.numTodoTests,
})

/** @param {any} report @returns {Count} */
export const playwrightCount = ({ stats, errors }) => ({
  passed: stats.expected,
  failed: stats.unexpected + stats.flaky + stats.skipped + (errors.length > 0 && stats.unexpected === 0 ? 1 : 0),
})

/** @param {(file: string) => Promise<Count>} work */
async function withReport(work) {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'plumbline-report-'))
  try {
    return await work(path.join(folder, 'report.json'))
  } finally {
    fs.rmSync(folder, { recursive: true, force: true })
  }
}

/** @param {string} project @returns {Stage} */
const vitest = (project) => ({
  name: project,
  work: (env) =>
    withReport(async (file) => {
      const report = ['--reporter=default', '--reporter=json', `--outputFile.json=${file}`]
      const ok = await runTool('vitest/vitest.mjs', ['run', '--project', project, ...report], env)
      return countOf(ok, file, vitestCount)
    }),
})

/** @type {Stage[]} */
export const stages = [
  {
    name: 'types',
    work: async (env) => {
      // The pages' own types are generated; without them every page would fail.
      const ready = await runTool('next/dist/bin/next', ['typegen'], { ...env, NEXT_TELEMETRY_DISABLED: '1' })
      return asOne(ready && (await runTool('typescript/bin/tsc', ['--noEmit'], env)))
    },
  },
  {
    name: 'lint',
    work: async (env) =>
      asOne(await runTool('@biomejs/biome/bin/biome', ['check', '--error-on-warnings', '--max-diagnostics=50'], env)),
  },
  vitest('architecture'),
  vitest('unit'),
  vitest('integration'),
  {
    name: 'browser',
    work: (env) =>
      withReport(async (file) => {
        const args = ['test', '--reporter=list,json']
        const ok = await runTool('@playwright/test/cli.js', args, { ...env, PLAYWRIGHT_JSON_OUTPUT_NAME: file })
        return countOf(ok, file, playwrightCount)
      }),
  },
]
