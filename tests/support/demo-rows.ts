import pg from 'pg'
import type { Row, Rows } from '../../seed/demo/prepared/file'
import { notKept } from '../../seed/demo/prepared/kept'
import { listTables, readRows } from '../../seed/demo/prepared/tables'
import type { Columns } from './same-rows'

/**
 * What chance makes anew each time the demo is told. Everything else is the same at each telling, ids and digests included:
 * what decks send has ids of the demo's own streams of chance.
 */
export const byChance: Columns = {
  // Ids that the server makes, and those of the words it keeps for a row.
  Edition: ['id'],
  Transfer: ['id'],
  DiverMembership: ['id'],
  Consent: ['id', 'saidById'],
  GrowthNote: ['id', 'noteId'],
  Recognition: ['id', 'reasonId'],
  SignOff: ['id', 'reasonId'],
  StandDown: ['id', 'reasonId'],
  Release: ['id', 'subjectId', 'reasonId', 'statementId'],
  GuideOpening: ['id'],
  MomentMark: ['id'],
  MomentMeasure: ['id', 'takesBackId'],
  MomentCheck: ['wordsId'],
  // At the desk an incident gets its id from the server, and its digest is over the id.
  Incident: ['id', 'noteId', 'contentDigest'],
  // A finding names the sign-offs and decisions it rests on.
  Decision: ['id', 'reasonId', 'onlyCoachId', 'findingDigest'],
  // Salts; what is committed to with them; and the digests over such commitments.
  Words: ['id', 'salt', 'commitment'],
  Moment: ['salt', 'commitment'],
  Observation: ['noteId', 'reasonId', 'digest'],
  // The ledger tells of all these.
  Ledger: ['payload', 'hash'],
}

const withoutOwn = (table: string, row: Row): Row =>
  Object.fromEntries(Object.entries(row).filter(([column]) => !notKept[table]?.includes(column)))

/** All rows of all tables, but for the two columns that are an installation's own: hashes of its password, and its clock. */
export async function readAll(url: string): Promise<Rows> {
  const owner = new pg.Client({ connectionString: url })
  await owner.connect()
  try {
    const rows = await readRows(owner, await listTables(owner))
    return new Map([...rows].map(([table, list]) => [table, list.map((row) => withoutOwn(table, row))]))
  } finally {
    await owner.end()
  }
}
