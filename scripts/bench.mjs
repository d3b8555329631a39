import { spawn } from 'node:child_process'
import { ensureInstalled, typescript } from './platform/install.mjs'
import { root } from './platform/paths.mjs'
import { explain } from './platform/progress.mjs'

/** `npm run bench -- sync|pages|deck [--copies N]`: times on a PostgreSQL and a region of its own; see tests/bench/run.ts. */
try {
  await ensureInstalled()
  process.exitCode = await new Promise((resolve, reject) => {
    const command = [...typescript('tests/bench/run.ts'), ...process.argv.slice(2)]
    const child = spawn(process.execPath, command, { cwd: root, stdio: 'inherit' })
    child.on('error', reject)
    child.on('exit', (code) => resolve(code ?? 1))
  })
} catch (error) {
  process.stderr.write(`${explain(error)}\n`)
  process.exitCode = 1
}
