import pg from 'pg'
import { publishEdition } from '../../lib/assessment/store/publish'
import { coast, enterCoast } from '../../seed/demo/bootstrap'
import { officeScope } from '../../seed/demo/hands'
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

/** Fills an empty database with a region of so many copies of the demo's divers, through the doors that decks and desks use. */
export async function fillRegion(ownerUrl: string, copies: number): Promise<void> {
  const told = copiesOf(copies)
  const owner = new pg.Client({ connectionString: ownerUrl })
  await owner.connect()
  await enterCoast(owner, 'for-the-bench-only', told)
  await owner.end()
  const { document } = readCurriculum('seed/curriculum')
  const published = await publishEdition(await officeScope('emeka', instantOn(firstDay - 7, 11)), document)
  if (!published.ok) throw new Error(JSON.stringify(published.problems))
  const began = performance.now()
  const dives = await tellSeason(today, () => undefined, told)
  const seconds = (performance.now() - began) / 1000
  const each = ((seconds * 1000) / dives).toFixed(1)
  process.stdout.write(
    `${coast.programme}: ${told.length} divers, ${dives} dives told in ${seconds.toFixed(0)} s, ${each} ms each\n`,
  )
}
