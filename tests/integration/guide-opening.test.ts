import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { publishEdition } from '../../lib/assessment/store/publish'
import { readGuideOpening, readOpenGuides, setGuideOpening } from '../../lib/curriculum/store/guide-opening'
import { beforeSignIn, closeDatabase } from '../../lib/platform/db'
import { asAccountRow } from '../support/account-rows'
import { asRole } from '../support/database'
import { makeCoast, minute, noon, officeAs, type PersonKey, type SmallCoast } from '../support/small-club'
import { tinyEdition } from '../support/tiny-edition'

let coast: SmallCoast
let other: SmallCoast

beforeAll(async () => {
  coast = await makeCoast()
  other = await makeCoast()
})
afterAll(closeDatabase)

const set = async (who: PersonKey, at: number, open: boolean, listed = false) =>
  setGuideOpening(await officeAs(coast, who, at), { open, listed })

describe('guides for families', () => {
  it('are closed until the lead opens them, and then give the name and the edition in force', async () => {
    expect(await readOpenGuides(coast.programme)).toBeNull()
    await set('lead', noon, true)
    const open = await readOpenGuides(coast.programme)
    expect(open).toMatchObject({ name: 'Small coast', listed: false })
    expect(open?.curriculum.hash).toBe(coast.edition)
    expect(Object.keys(open ?? {}).sort()).toEqual(['curriculum', 'listed', 'name'])
    expect(await readOpenGuides(other.programme)).toBeNull()
  })

  it('say who opened them and when, and keep each time as a row', async () => {
    await set('lead', noon + minute, true, true)
    expect(await readGuideOpening(await officeAs(coast, 'reviewer', noon + 2 * minute))).toEqual({
      open: true,
      listed: true,
      by: 'lead',
      at: noon + minute,
    })
    await expect(asRole('owner', (owner) => owner.query('UPDATE "GuideOpening" SET "open" = false'))).rejects.toThrow(
      /append-only/,
    )
  })

  it('give the edition that is published later, at once', async () => {
    const document = { ...tinyEdition(), title: 'The second edition' }
    const published = await publishEdition(await officeAs(coast, 'lead', noon + 3 * minute), document)
    expect(published).toMatchObject({ ok: true })
    expect((await readOpenGuides(coast.programme))?.curriculum.document.title).toBe('The second edition')
  })

  it('are opened and closed by the lead alone', async () => {
    for (const who of ['assistant', 'head', 'reviewer'] as const)
      await expect(set(who, noon + 4 * minute, false), who).rejects.toThrow(/row-level security/)
    const elsewhere = { ...(await officeAs(other, 'lead', noon)), programme: coast.programme }
    await expect(setGuideOpening(elsewhere, { open: false, listed: false })).rejects.toThrow(/row-level security/)
    expect(await readGuideOpening({ ...elsewhere })).toBeNull()
  })

  it('are not found once they are closed, whatever was said before, and by whatever clock', async () => {
    await set('lead', noon - 60 * minute, false)
    expect(await readOpenGuides(coast.programme)).toBeNull()
    const rows = await beforeSignIn(
      (tx) => tx.$queryRaw<{ document: string | null }[]>`
      SELECT open_edition(${coast.programme}::uuid) AS document`,
    )
    expect(rows).toEqual([{ document: null }])
  })

  it('never let anybody read the tables themselves without an account', async () => {
    for (const table of ['GuideOpening', 'Edition', 'Programme', 'Exemplar']) {
      const seen = await asAccountRow('00000000-0000-0000-0000-000000000000', (client) =>
        client.query(`SELECT count(*)::int AS n FROM "${table}"`),
      )
      expect(`${table} ${seen.rows[0]?.n}`).toBe(`${table} 0`)
    }
  })
})
