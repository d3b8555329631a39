import type { Scope } from '../../access/scope'
import { asAccount, type Tx } from '../../platform/db'
import type { Curriculum } from '../edition/curriculum'
import { indexEdition } from '../edition/index-edition'
import type { EditionDocument } from '../model'

// A published edition never changes, so what was indexed once serves every later request of this process.
const indexed = new Map<string, Curriculum>()

/** The edition in force at an instant: the last one published by then. Throws when the programme had none. */
export async function getEditionInForce(tx: Tx, scope: Scope, at: number = scope.at): Promise<Curriculum> {
  const row = await tx.edition.findFirst({
    where: { programmeId: scope.programme, publishedAt: { lte: new Date(at) } },
    orderBy: { number: 'desc' },
    select: { hash: true },
  })
  if (!row) throw new Error('the programme has not published an edition of its curriculum by then')
  return indexed.get(row.hash) ?? getEdition(tx, scope, row.hash)
}

/** The edition in force now, for reading: as `getEditionInForce`, in a transaction of its own. */
export const readEditionInForce = (scope: Scope): Promise<Curriculum> =>
  asAccount(scope.account, (tx) => getEditionInForce(tx, scope))

/** A published edition by its hash, or null when this programme has published none of that name. */
export async function findEdition(tx: Tx, scope: Scope, hash: string): Promise<Curriculum | null> {
  const known = indexed.get(hash)
  if (known) {
    const published = await tx.edition.count({ where: { programmeId: scope.programme, hash } })
    return published > 0 ? known : null
  }
  const row = await tx.edition.findFirst({ where: { programmeId: scope.programme, hash } })
  return row ? indexOnce(hash, row.document) : null
}

function indexOnce(hash: string, document: string): Curriculum {
  const curriculum = indexEdition(JSON.parse(document) as EditionDocument, hash)
  indexed.set(hash, curriculum)
  return curriculum
}

/** A programme whose guides are open, as anybody sees it: its name and its edition in force; null when they are closed. */
export async function findOpenEdition(
  tx: Tx,
  programme: string,
): Promise<{ readonly name: string; readonly listed: boolean; readonly curriculum: Curriculum } | null> {
  const [open] = await tx.$queryRaw<{ name: string; hash: string; listed: boolean }[]>`
    SELECT * FROM open_guides(${programme}::uuid)`
  if (!open) return null
  const { name, hash, listed } = open
  const known = indexed.get(hash)
  if (known) return { name, listed, curriculum: known }
  const [row] = await tx.$queryRaw<{ document: string | null }[]>`SELECT open_edition(${programme}::uuid) AS document`
  return row?.document ? { name, listed, curriculum: indexOnce(hash, row.document) } : null
}

/** As `findEdition`; throws when there is none. */
export async function getEdition(tx: Tx, scope: Scope, hash: string): Promise<Curriculum> {
  const curriculum = await findEdition(tx, scope, hash)
  if (!curriculum) throw new Error(`no published edition ${hash}`)
  return curriculum
}

/** Whether an edition of that hash exists as a draft only. */
export async function isDraft(tx: Tx, hash: string): Promise<boolean> {
  const rows = await tx.$queryRaw<{ draft: boolean }[]>`SELECT is_draft(${hash}) AS draft`
  return rows[0]?.draft ?? false
}
