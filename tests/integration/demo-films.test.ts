import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { measuresInPhases } from '@/lib/assessment/mark/compare'
import { compareMeasures } from '@/lib/assessment/measure/compare-measures'
import { readExemplars, readOpenExemplars } from '@/lib/assessment/store/exemplars'
import { findMoment } from '@/lib/assessment/store/moments'
import { closeDatabase } from '@/lib/platform/db'
import { coast } from '@/seed/demo/bootstrap'
import { coachScope, officeScope } from '@/seed/demo/hands'
import { fixedNow } from '@/seed/demo/season'
import { asRole, databaseUrls } from '../support/database'
import { clockOffset, count } from '../support/demo-facts'
import { ownState, seed } from '../support/tell-demo'

// Loaded as everybody gets it; that the write path yields the same rows is for demo.test.ts to say.
beforeAll(async () => {
  const { code, said } = await seed(databaseUrls(), ownState())
  expect(code, said).toBe(0)
}, 1_200_000)

afterAll(closeDatabase)

describe('the films of the demo', () => {
  it('has films of its last weeks that coaches marked and measured, one of them two who do not quite agree', async () => {
    const marked = await asRole('owner', (client) =>
      client.query<{ coaches: string; entries: string }>(
        `SELECT count(DISTINCT "coachId") AS coaches, count(DISTINCT "atMs") FILTER (WHERE "phase" = 'entry') AS entries
         FROM "MomentMark" GROUP BY "momentId" ORDER BY 1 DESC`,
      ),
    )
    expect(marked.rows.length).toBeGreaterThanOrEqual(2)
    expect(marked.rows[0]).toEqual({ coaches: '2', entries: '2' })
    expect(await count(`"MomentMeasure" WHERE "inputs" ->> 'kind' = 'tilt'`)).toBeGreaterThanOrEqual(2)
    expect(await count(`"MomentMeasure" m, jsonb_array_elements(m."results") r WHERE (r ->> 'check')::boolean`)).toBe(0)
  })

  it('has, of whom the shared film shows, a marked film of the same dive of months ago, to lay beside it', async () => {
    const { rows } = await asRole('owner', (client) =>
      client.query<{ diver: string; days: number; coaches: number; films: number }>(
        `WITH marked AS (
           SELECT a."diverId", a."skill", a."place", a."attemptedAt", m."link",
                  (SELECT count(DISTINCT k."coachId") FROM "MomentMark" k WHERE k."momentId" = m."id") AS coaches,
                  (SELECT count(*) FROM "MomentMeasure" x WHERE x."momentId" = m."id") AS measures
           FROM "Moment" m JOIN "Observation" o ON o."id" = m."observationId" JOIN "Attempt" a ON a."id" = o."attemptId"
           WHERE EXISTS (SELECT FROM "MomentMark" k WHERE k."momentId" = m."id"))
         SELECT this."diverId" AS diver, this."coaches"::int AS coaches,
                extract(day FROM this."attemptedAt" - before."attemptedAt")::int AS days,
                count(DISTINCT other."link")::int AS films
         FROM marked this JOIN marked before USING ("diverId", "skill", "place"), LATERAL (VALUES (this."link"), (before."link")) other("link")
         WHERE this."attemptedAt" - before."attemptedAt" >= interval '90 days' AND this.measures > 0 AND before.measures > 0
         GROUP BY 1, 2, 3`,
      ),
    )
    expect(rows).toEqual([{ diver: coast.diver('remy'), coaches: 2, days: expect.any(Number), films: 2 }])
    expect(rows[0]?.days).toBeGreaterThanOrEqual(90)
  })

  it('shows every coach of the club what changed on those two films: the line at the entry, and nothing else', async () => {
    const { rows } = await asRole('owner', (client) =>
      client.query<{ id: string }>(
        `SELECT m."id" FROM "Moment" m JOIN "Observation" o ON o."id" = m."observationId" JOIN "Attempt" a ON a."id" = o."attemptId"
         WHERE a."diverId" = $1 AND EXISTS (SELECT FROM "MomentMark" k WHERE k."momentId" = m."id") ORDER BY a."attemptedAt" DESC`,
        [coast.diver('remy')],
      ),
    )
    for (const coach of ['joel', 'marguerite', 'tobiah'] as const) {
      const scope = await coachScope(coach, fixedNow - (await clockOffset()))
      const [now, then] = await Promise.all(rows.map(({ id }) => findMoment(scope, id)))
      if (!now || !then) throw new Error(`${coach} does not find both films`)
      const told = compareMeasures(measuresInPhases(now), measuresInPhases(then)).filter(
        ({ difference }) => difference.told,
      )
      expect(
        told.map(({ what, phase }) => [what, phase]),
        coach,
      ).toEqual([['bodyTilt', 'entry']])
    }
  })

  it('has dives that were filmed and wait for their clip, of one coach', async () => {
    const waiting = await asRole('owner', (client) =>
      client.query<{ coach: string; dives: string }>(
        `SELECT "coachId" AS coach, count(*) AS dives FROM "FilmedAttempt" f
         WHERE NOT EXISTS (SELECT FROM "FilmedOutcome" o WHERE o."attemptId" = f."attemptId") GROUP BY 1`,
      ),
    )
    expect(waiting.rows.map(({ coach }) => coach)).toEqual([coast.account('petra')])
    expect(Number(waiting.rows[0]?.dives)).toBeGreaterThanOrEqual(4)
  })

  it('has exemplars with a consent each, of criteria and of faults', async () => {
    expect(await count('"Exemplar"')).toBeGreaterThanOrEqual(4)
    expect(await count('"Exemplar" WHERE "fault" IS NOT NULL')).toBeGreaterThanOrEqual(1)
    expect(await count(`"Consent" WHERE "purpose" = 'exemplar' AND "reach" = 'everybody'`)).toBe(0)
    const seen = await readExemplars(await officeScope('constance', fixedNow - (await clockOffset())))
    expect(seen.length).toBeGreaterThanOrEqual(2)
    expect(new Set(seen.map(({ moment }) => moment))).toEqual(new Set([null]))
    expect(await readOpenExemplars(coast.programme)).toEqual([])
  })
})
