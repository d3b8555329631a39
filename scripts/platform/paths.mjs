import path from 'node:path'

export const root = path.resolve(import.meta.dirname, '../..')

/** What belongs to this installation and not to git: database, secrets, logs. */
export const stateFolder = path.resolve(root, process.env.PLUMBLINE_STATE ?? '.plumbline')

/** @param {string[]} parts */
export const inRoot = (...parts) => path.join(root, ...parts)

/** @param {string[]} parts */
export const inState = (...parts) => path.join(stateFolder, ...parts)
