import { expect, it } from 'vitest'
import { getEnv } from '@/lib/platform/env'
import { getHealth } from '@/lib/platform/health'
import { asRole, resetDatabase } from '../../support/database'

const programmes = () =>
  asRole('owner', async (client) => (await client.query('SELECT count(*)::int AS n FROM "Programme"')).rows[0].n)

it('is this file’s own, reached as the application role', async () => {
  const [row] = await asRole(
    'app',
    async (client) => (await client.query('SELECT current_user, current_database()')).rows,
  )
  expect(row.current_user).toBe('app_user')
  expect(getEnv().databaseAppUrl).toContain(row.current_database)
  expect(await getHealth()).toMatchObject({ status: 'ok', database: 'ok' })
})

it('can be empty again', async () => {
  await asRole('owner', (client) =>
    client.query(
      `INSERT INTO "Programme" (id, name, zone, "createdAt") VALUES (gen_random_uuid(), 'Any coast', 'Etc/UTC', now())`,
    ),
  )
  expect(await programmes()).toBe(1)
  await resetDatabase()
  expect(await programmes()).toBe(0)
})
