import { createHash } from 'node:crypto'
import fs from 'node:fs'
import path from 'node:path'
import { root } from './paths.mjs'

/** Every file below a folder of the repository, sorted; none when there is no such folder. @param {string} folder @returns {string[]} */
export function filesBelow(folder) {
  const entries = fs.existsSync(path.join(root, folder))
    ? fs.readdirSync(path.join(root, folder), { withFileTypes: true })
    : []
  return entries
    .flatMap((entry) => {
      const name = path.join(folder, entry.name)
      return entry.isDirectory() ? filesBelow(name) : [name]
    })
    .sort()
}

/** SHA-256 over names and bytes of files of the repository, and over some words. @param {string[]} files @param {string[]} words */
export function digestOf(files, words = []) {
  const hash = createHash('sha256')
  for (const word of words) hash.update(`${word}\0`)
  for (const file of files) {
    if (!fs.existsSync(path.join(root, file))) continue
    hash.update(`${file}\0`)
    hash.update(
      createHash('sha256')
        .update(fs.readFileSync(path.join(root, file)))
        .digest(),
    )
  }
  return hash.digest('hex')
}

/** What a stamp file says; '' when there is none. @param {string} file */
export const stampIn = (file) => (fs.existsSync(file) ? fs.readFileSync(file, 'utf8').trim() : '')
