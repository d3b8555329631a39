import { chanceOf } from '../../seed/demo/chance'
import { effort } from '../support/effort'
import { closeCove, makeCove } from './support/cove'
import { faults, rating, type Trouble } from './support/faults'
import { startOwnServer } from './support/own-server'
import { signInAs } from './support/people'
import { openPhone } from './support/phone'
import { allSent, expectExactly, type Rated } from './support/rater'
import { expect, test } from './support/test'

/** A fixed seed: the same ratings and the same faults in the same order each time. */
const chance = chanceOf('deck faults')
const names = Object.keys(faults)
const skill = 'fall-in'
/** Each fault once; in the long form fifty of them in any order, five hundred ratings. */
const [hits, ratingsEach] = [effort(names.length, 50), effort(2, 10)]

test('whatever happens to phone, network or server, the record is what was rated, exactly once', async ({ demo }) => {
  test.setTimeout(effort(300_000, 3_600_000))
  const cove = makeCove(demo)
  const server = await startOwnServer(demo)
  const phone = await openPhone(server.url)
  const rated: Rated[] = []
  const remember = (one: Rated) => rated.push(one)
  try {
    await signInAs(phone.page(), demo, cove.emails.assistant)
    await phone.reopen()
    await phone.page().goto(`/deck#/diver/${cove.diver}/${encodeURIComponent(`${skill}@poolside`)}`)
    await phone.page().waitForFunction(() => navigator.serviceWorker.controller !== null)
    const rateSome = rating(phone, chance, remember)
    const trouble: Trouble = { demo, server, phone, diver: cove.diver, chance, rateSome, remember }
    for (let hit = 0; hit < hits; hit++) {
      const name = hit < names.length ? names[hit] : chance.pick(names)
      await test.step(name ?? '', async () => {
        await faults[name ?? '']?.(trouble, ratingsEach)
      })
    }
    await allSent(phone.page())
    expect(rated).toHaveLength(hits * ratingsEach)
    await expectExactly(demo, cove.diver, skill, rated)
    expect(phone.thrown).toEqual([])
    process.stdout.write(`    ${rated.length} ratings through ${hits} faults: each on the server once\n`)
  } finally {
    await phone.close()
    await server.kill()
    await closeCove(demo, cove)
  }
})
