import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { expect, it } from 'vitest'
import { driftFromSchema, migrate } from '../../../scripts/database/migrate'
import { requirePowerless } from '../../../scripts/database/roles'
import { databaseUrls } from '../../support/database'

const prisma = path.resolve(import.meta.dirname, '../../../prisma')

// Foreign keys are the migrations' own, like policies and triggers: the schema names no relations.
const foreignKey = /^ALTER TABLE "\w+" DROP CONSTRAINT "\w+_fkey"$/

it('leaves nothing that the schema would still change', async () => {
  expect(await migrate(databaseUrls().owner, prisma)).toEqual([])
  const drift = await driftFromSchema(databaseUrls().owner, prisma)
  expect(drift.filter((statement) => !foreignKey.test(statement))).toEqual([])
})

it('sees a schema that has gone on without a migration', async () => {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'plumbline-schema-'))
  const schema = fs.readFileSync(path.join(prisma, 'schema.prisma'), 'utf8')
  fs.writeFileSync(path.join(folder, 'schema.prisma'), schema.replace('model Club {', 'model Club {\n  motto String?'))
  expect((await driftFromSchema(databaseUrls().owner, folder)).join()).toMatch(
    /ALTER TABLE "Club" ADD COLUMN\s+"motto"/,
  )
  fs.rmSync(folder, { recursive: true })
})

it('lets the application role serve, and neither the owner nor the superuser', async () => {
  await expect(requirePowerless(databaseUrls().app)).resolves.toBeUndefined()
  await expect(requirePowerless(databaseUrls().owner)).rejects.toThrow('does not serve as "app_owner": it owns tables')
  await expect(requirePowerless(databaseUrls().superuser)).rejects.toThrow('is not bound by row-level security')
})
