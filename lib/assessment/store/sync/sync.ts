import type { Scope } from '../../../access/scope'
import { asAccount, isRowRefused, type Tx } from '../../../platform/db'
import type { DeckItem, ItemAnswer } from '../../deck/contract'
import { refusal } from '../../deck/refusal'
import { keepReadiness, type ReadinessWhen } from '../readiness'
import { toFile } from '../records'
import type { SyncContext, Taken } from './context'
import { type Added, nothingAdded, readKept, writeAdded } from './kept'
import { type OpenBatch, openBatch } from './open-batch'
import { type Parsed, parseItem } from './parse'
import { takeAttempt } from './take-attempt'
import { takeCall } from './take-call'
import { takeIncident } from './take-incident'
import { takeObservation } from './take-observation'

/** What became of a batch: an answer an item, the divers of whom something was kept, and all that was written. */
interface Outcome {
  readonly batch: OpenBatch
  readonly answers: readonly ItemAnswer[]
  readonly changed: ReadonlySet<string>
  readonly added: readonly Added[]
}

/**
 * Takes a batch from a deck in, in order, in one transaction, with an answer for each item. `scope` is a coaching scope;
 * `sentAt` is the device's clock when it sent. What is answered "accepted" or "known" can be read back; what is refused left
 * nothing behind. All items are judged in memory and written together; when another device wrote one of the ids meanwhile, or
 * the database refuses a row, the batch is taken once more, item by item.
 */
export function syncDeck(
  scope: Scope,
  sentAt: number,
  items: readonly unknown[],
  when: ReadinessWhen = 'now',
): Promise<ItemAnswer[]> {
  return asAccount(
    scope.account,
    async (tx) => {
      const entries = items.map(parseItem)
      const open = () => openBatch(tx, scope, sentAt, itemsOf(entries))
      const taken =
        (await inSavepoint(tx, async () => takeTogether(await open(), entries))) ??
        (await takeOneByOne(await open(), entries))
      await keepReadiness(tx, scope, taken.batch.curriculum, filesAfter(taken), when)
      return [...taken.answers]
    },
    { timeout: 60_000 },
  )
}

const itemsOf = (entries: readonly Parsed[]): DeckItem[] => entries.flatMap(({ item }) => item ?? [])

/** The work inside a savepoint, or null, with nothing written, when the database refuses a row: its id is there already, or it does not fit. */
async function inSavepoint<T>(tx: Tx, work: () => Promise<T>): Promise<T | null> {
  await tx.$executeRaw`SAVEPOINT taking`
  try {
    const done = await work()
    await tx.$executeRaw`RELEASE SAVEPOINT taking`
    return done
  } catch (error) {
    await tx.$executeRaw`ROLLBACK TO SAVEPOINT taking`
    if (!isRowRefused(error)) throw error
    return null
  }
}

/** All items on what is kept of all they name, written with one statement a table. */
export async function takeTogether(batch: OpenBatch, entries: readonly Parsed[]): Promise<Outcome> {
  const context = { ...batch, kept: await readKept(batch, itemsOf(entries)), added: nothingAdded() }
  const changed = new Set<string>()
  const answers: ItemAnswer[] = []
  for (const entry of entries) answers.push(await answer(context, entry, changed))
  await writeAdded(batch.tx, context.added)
  return { batch, answers, changed, added: [context.added] }
}

const unfit = refusal(
  'malformed',
  'the server cannot store it as it is: a number, a text or an id in it does not fit. Change what was typed last, then send it again',
)

/**
 * Each item by itself. Two devices may send the same item at once: the second finds it on its second look. What the database
 * refuses then too is answered as refused, so that no item holds back those after it.
 */
export async function takeOneByOne(batch: OpenBatch, entries: readonly Parsed[]): Promise<Outcome> {
  const { tx } = batch
  const changed = new Set<string>()
  const answers: ItemAnswer[] = []
  const added: Added[] = []
  for (const entry of entries) {
    const take = () => takeTogether(batch, [entry])
    const refuse = () => takeTogether(batch, [{ id: entry.id, item: null, refusal: unfit }])
    const taken = (await inSavepoint(tx, take)) ?? (await inSavepoint(tx, take)) ?? (await refuse())
    answers.push(...taken.answers)
    added.push(...taken.added)
    for (const diver of taken.changed) changed.add(diver)
  }
  return { batch, answers, changed, added }
}

async function answer(context: SyncContext, entry: Parsed, changed: Set<string>): Promise<ItemAnswer> {
  const taken: Taken = entry.item ? await judge(context, entry.item) : { result: 'refused', refusal: entry.refusal }
  if (taken.result === 'refused') {
    context.refused.set(entry.id, taken.refusal)
    return { id: entry.id, result: 'refused', ...taken.refusal }
  }
  const diver = entry.item && diverOf(context, entry.item)
  if (taken.result === 'accepted' && diver) changed.add(diver)
  return { id: entry.id, ...taken }
}

function judge(context: SyncContext, item: DeckItem): Taken | Promise<Taken> {
  switch (item.kind) {
    case 'call':
      return takeCall(context, item)
    case 'attempt':
      return takeAttempt(context, item)
    case 'observation':
      return takeObservation(context, item)
    case 'incident':
      return takeIncident(context, item)
  }
}

const diverOf = ({ kept }: SyncContext, item: DeckItem): string | undefined =>
  item.kind === 'observation' ? kept.attempts.get(item.attempt)?.diverId : item.diver

/** The files of the divers of whom something was kept: what was read before, and what was written since. */
export function filesAfter({ batch, changed, added }: Outcome) {
  const of = <Row extends { diverId: string }>(diver: string, rows: readonly Row[]) =>
    rows.filter((row) => row.diverId === diver)
  return batch.before
    .filter(({ diver }) => changed.has(diver.id))
    .map(({ diver, rows }) => {
      const file = toFile({
        diver,
        rows: {
          ...rows,
          attempts: [...rows.attempts, ...added.flatMap(({ attempts }) => of(diver.id, attempts))],
          observations: [...rows.observations, ...added.flatMap(({ observations }) => of(diver.id, observations))],
        },
      })
      const incidents = batch.incidents.flatMap((one) => (one.diver === diver.id ? [one.fact] : []))
      return { ...file, record: { ...file.record, incidents: [...file.record.incidents, ...incidents] } }
    })
}
