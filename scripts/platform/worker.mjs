import { createHash } from 'node:crypto'
import fs from 'node:fs'
import path from 'node:path'
import { inRoot } from './paths.mjs'

const kept = /\.(js|css|woff2)$/

/** Every file below a folder, sorted. @param {string} folder @returns {string[]} */
const below = (folder) =>
  fs
    .readdirSync(folder, { recursive: true, withFileTypes: true })
    .flatMap((entry) => (entry.isFile() ? [path.join(entry.parentPath, entry.name)] : []))
    .sort()

/**
 * Fills the worker's template in: the files of the build that a deck needs to open without a network, and a version that
 * changes with any of them, with the build or with the worker itself.
 * @param {string} template @param {string} buildId @param {{ url: string, bytes: Buffer }[]} files
 */
export function fillWorker(template, buildId, files) {
  const hash = createHash('sha256').update(template).update(buildId)
  for (const { url, bytes } of files) hash.update(`${url}\0`).update(bytes)
  const places = { "'__VERSION__'": hash.digest('hex').slice(0, 16), "['__FILES__']": files.map(({ url }) => url) }
  return Object.entries(places).reduce((text, [place, value]) => {
    if (!text.includes(place)) throw new Error(`the worker's template has no place ${place}`)
    return text.replace(place, () => JSON.stringify(value))
  }, template)
}

/** Writes the worker beside the files that the server hands out. @param {string} dist @param {string} folder the folder that is served from */
export function writeWorker(dist, folder) {
  const statics = inRoot(dist, 'static')
  const files = below(statics)
    .filter((file) => kept.test(file))
    .map((file) => ({
      url: `/_next/static/${path.relative(statics, file).split(path.sep).map(encodeURIComponent).join('/')}`,
      bytes: fs.readFileSync(file),
    }))
  const buildId = fs.readFileSync(inRoot(dist, 'BUILD_ID'), 'utf8')
  fs.mkdirSync(`${folder}/public`, { recursive: true })
  fs.writeFileSync(
    `${folder}/public/sw.js`,
    fillWorker(fs.readFileSync(inRoot('sw/sw.template.js'), 'utf8'), buildId, files),
  )
}
