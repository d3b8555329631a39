import pg from 'pg'
import { v7 as uuidv7 } from 'uuid'
import { scopeOf } from '../../../lib/access/scope'
import { findActor } from '../../../lib/access/store/actors'
import { hashPassword } from '../../../lib/access/store/password'
import { publishEdition } from '../../../lib/assessment/store/publish'
import { closeDatabase } from '../../../lib/platform/db'
import { getEnv } from '../../../lib/platform/env'
import { insertAccount, insertMembership } from '../../../seed/builders/people'
import { insertProgramme } from '../../../seed/builders/programme'
import { readCurriculumFolder } from '../../../seed/read-curriculum'

/** Run by a browser test: a programme of its own beside the demo's, with a lead and the same curriculum. Prints who and what. */
const { databaseOwnerUrl, demoPassword } = getEnv()
if (!databaseOwnerUrl || !demoPassword) throw new Error('the owner’s address and the demo’s password are needed')
const owner = new pg.Client({ connectionString: databaseOwnerUrl })
await owner.connect()
const createdAt = new Date('2025-01-01T00:00:00Z')
const [programme, lead] = [uuidv7(), uuidv7()]
const email = `lead-${programme.slice(-8)}@office.example`
await insertProgramme(owner, { id: programme, name: 'Other coast', zone: 'Europe/Lisbon', createdAt })
const passwordHash = await hashPassword(demoPassword)
await insertAccount(owner, { id: lead, email, name: 'Ottoline Farraday', initials: 'OF', passwordHash, createdAt })
await insertMembership(owner, {
  id: uuidv7(),
  accountId: lead,
  programmeId: programme,
  clubId: null,
  role: 'lead',
  from: createdAt,
})
await owner.end()
const actor = await findActor(lead, lead, Date.now())
const { document } = readCurriculumFolder('seed/curriculum')
if (!actor || !document) throw new Error('the programme has no lead or no curriculum')
const published = await publishEdition(scopeOf(actor, Date.now()), document)
if (!published.ok) throw new Error(published.problems[0]?.message)
await closeDatabase()
process.stdout.write(`${JSON.stringify({ programme, lead, email })}\n`)
