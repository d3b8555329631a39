import { createHash } from 'node:crypto'
import fs from 'node:fs'
import { digestOf, filesBelow, stampIn } from './files.mjs'
import { withLock } from './lock.mjs'
import { inRoot, inState, root } from './paths.mjs'
import { run } from './processes.mjs'
import { step } from './progress.mjs'
import { writeWorker } from './worker.mjs'

const folders = ['app', 'lib', 'public', 'seed', 'sw']
const files = [
  ...['next.config.ts', 'proxy.ts', 'postcss.config.mjs', 'tsconfig.json', 'package.json', 'package-lock.json'],
  'prisma/schema.prisma',
]

/** Everything that a build is made of. @param {string} actionsKey */
const sources = (actionsKey) =>
  digestOf(
    [...folders.flatMap(filesBelow).filter((file) => !/\.test\.tsx?$|\.md$/.test(file)), ...files],
    [process.version, createHash('sha256').update(actionsKey).digest('hex')],
  )

/** @param {string} dist */
const standalone = (dist) => inRoot(dist, 'standalone')
/** @param {string} dist */
const stamp = (dist) => `${standalone(dist)}/.plumbline-stamp`

/** Whether the build in that folder is of these sources. @param {string} dist @param {string} actionsKey */
export const isBuilt = (dist, actionsKey) => stampIn(stamp(dist)) === sources(actionsKey)

/**
 * The folder from which `node server.js` serves, built when the sources have changed.
 * @param {string} dist `.next`, or another folder beside a server that runs from there
 * @param {string} actionsKey
 */
export async function ensureBuilt(dist, actionsKey) {
  if (isBuilt(dist, actionsKey)) return standalone(dist)
  await withLock(`build${dist}`, async () => {
    const wanted = sources(actionsKey)
    if (stampIn(stamp(dist)) === wanted) return
    fs.rmSync(stamp(dist), { force: true })
    await step('build', () =>
      run(process.execPath, [inRoot('node_modules/next/dist/bin/next'), 'build'], {
        cwd: root,
        env: {
          ...process.env,
          NODE_ENV: 'production',
          PLUMBLINE_DIST: dist,
          NEXT_TELEMETRY_DISABLED: '1',
          // Names of server actions come from it: a page opened before an update still finds its action after it.
          NEXT_SERVER_ACTIONS_ENCRYPTION_KEY: actionsKey,
        },
        log: inState(`logs/build${dist}.log`),
        what: 'next build',
      }),
    )
    copyInto(inRoot(dist, 'static'), `${standalone(dist)}/${dist}/static`)
    copyInto(inRoot('public'), `${standalone(dist)}/public`)
    writeWorker(dist, standalone(dist))
    fs.writeFileSync(stamp(dist), wanted)
  })
  return standalone(dist)
}

/** @param {string} from @param {string} to */
function copyInto(from, to) {
  if (fs.existsSync(from)) fs.cpSync(from, to, { recursive: true, verbatimSymlinks: true })
}
