import pg from 'pg'
import { publishEdition } from '../../lib/assessment/store/publish'
import { coast, enterCoast } from '../../seed/demo/bootstrap'
import { officeScope } from '../../seed/demo/hands'
import { readPrepared } from '../../seed/demo/prepared/file'
import { loadRows } from '../../seed/demo/prepared/load'
import { firstDay, instantOn, today } from '../../seed/demo/season'
import { stories } from '../../seed/demo/stories/stories'
import type { Story } from '../../seed/demo/stories/story'
import { tellSeason } from '../../seed/demo/tell'
import { readCurriculum } from '../../seed/read-curriculum'

/** The demo's stories several times over: each copy has a key of its own, and with it chances of its own. */
const copiesOf = (copies: number): Story[] =>
  Array.from({ length: copies }, (_, copy) =>
    stories.map((story) => (copy === 0 ? story : { ...story, key: `${story.key}-${copy}` })),
  ).flat()

/** The demo as it is prepared; answers whether it could be loaded. No readiness is kept, as after a day on which everybody trained. */
async function loadPrepared(owner: pg.Client, began: number): Promise<boolean> {
  const prepared = readPrepared()
  if (!prepared.ok) return false
  await loadRows(owner, prepared.rows, { password, clockOffset: 0 })
  await owner.query('DELETE FROM "Readiness"')
  process.stdout.write(`the prepared demo loaded in ${seconds(began).toFixed(1)} s\n`)
  return true
}

const seconds = (began: number): number => (performance.now() - began) / 1000
const password = 'for-the-bench-only'

/**
 * Fills an empty database with a region of so many copies of the demo's divers: the demo as it is prepared, or several copies told
 * through the doors that decks and desks use.
 */
export async function fillRegion(ownerUrl: string, copies: number): Promise<void> {
  const owner = new pg.Client({ connectionString: ownerUrl })
  await owner.connect()
  try {
    const began = performance.now()
    if (copies === 1 && (await loadPrepared(owner, began))) return
    await tellRegion(owner, copiesOf(copies))
  } finally {
    await owner.end()
  }
}

async function tellRegion(owner: pg.Client, told: readonly Story[]): Promise<void> {
  await enterCoast(owner, password, told)
  const { document } = readCurriculum('seed/curriculum')
  const published = await publishEdition(await officeScope('emeka', instantOn(firstDay - 7, 11)), document)
  if (!published.ok) throw new Error(JSON.stringify(published.problems))
  const began = performance.now()
  const dives = await tellSeason(today, () => undefined, told)
  const each = ((seconds(began) * 1000) / dives).toFixed(1)
  process.stdout.write(
    `${coast.programme}: ${told.length} divers, ${dives} dives told in ${seconds(began).toFixed(0)} s, ${each} ms each\n`,
  )
}
