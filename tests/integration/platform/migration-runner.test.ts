import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import pg from 'pg'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { migrate } from '../../../scripts/database/migrate'
import { asRole, databaseUrls } from '../../support/database'

const name = `${new URL(databaseUrls().owner).pathname.slice(1)}_runner`
const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'plumbline-migrations-'))
const owner = () => databaseUrls().owner.replace(/[^/]+$/, name)

const bell = `
CREATE TABLE bell (word text);
-- A comment; with a semicolon.
CREATE FUNCTION ring() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF NEW.word = 'a;b' THEN RAISE EXCEPTION 'not that; not ever'; END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER ring BEFORE INSERT ON bell FOR EACH ROW EXECUTE FUNCTION ring();`

function write(migration: string, sql: string): void {
  fs.mkdirSync(path.join(folder, 'migrations', migration), { recursive: true })
  fs.writeFileSync(path.join(folder, 'migrations', migration, 'migration.sql'), sql)
}

async function query(sql: string): Promise<unknown[]> {
  const client = new pg.Client({ connectionString: owner() })
  await client.connect()
  try {
    return (await client.query(sql)).rows
  } finally {
    await client.end()
  }
}

beforeAll(async () => {
  await asRole('superuser', (client) => client.query(`CREATE DATABASE ${name} OWNER app_owner`))
  fs.writeFileSync(path.join(folder, 'schema.prisma'), 'datasource db {\n  provider = "postgresql"\n}\n')
  fs.mkdirSync(path.join(folder, 'migrations'))
  fs.writeFileSync(path.join(folder, 'migrations/migration_lock.toml'), 'provider = "postgresql"\n')
})

afterAll(async () => {
  await asRole('superuser', (client) => client.query(`DROP DATABASE ${name} WITH (FORCE)`))
  fs.rmSync(folder, { recursive: true })
})

it('applies a whole file, functions and all, once', async () => {
  write('0001_bell', bell)
  expect(await migrate(owner(), folder)).toEqual(['0001_bell'])
  expect(await migrate(owner(), folder)).toEqual([])
  await query(`INSERT INTO bell VALUES ('ding')`)
  await expect(query(`INSERT INTO bell VALUES ('a;b')`)).rejects.toThrow('not that; not ever')
})

it('leaves nothing of a migration that fails, says why, and goes on when it is mended', async () => {
  write('0002_rope', 'CREATE TABLE rope (length integer); ALTER TABLE bell ADD COLUMN rope integer; SELECT 1/0;')
  await expect(migrate(owner(), folder)).rejects.toThrow(/0002_rope[\s\S]*division by zero/)
  expect(await query(`SELECT to_regclass('rope') AS rope`)).toEqual([{ rope: null }])
  write('0002_rope', 'CREATE TABLE rope (length integer);')
  expect(await migrate(owner(), folder)).toEqual(['0002_rope'])
})

it('refuses a migration that was edited after it was applied', async () => {
  write('0001_bell', `${bell}\nCREATE TABLE clapper ();`)
  await expect(migrate(owner(), folder)).rejects.toThrow('other versions of 0001_bell')
  write('0001_bell', bell)
})
