import { execFileSync } from 'node:child_process'
import type { Demo } from './demo'

/** What a script beside this file says, as JSON: in a process of its own, with the addresses of the demo's database. */
export function tellOwner<Told>(demo: Demo, script: 'make-cove' | 'make-office'): Told {
  const said = execFileSync(process.execPath, ['--import', 'tsx', `tests/e2e/support/${script}.ts`], {
    encoding: 'utf8',
    env: {
      ...process.env,
      DATABASE_URL: demo.database.owner,
      DATABASE_APP_URL: demo.database.app,
      PLUMBLINE_DEMO_PASSWORD: demo.password,
    },
  })
  return JSON.parse(said)
}
