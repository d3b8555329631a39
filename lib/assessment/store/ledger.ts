import type { Scope } from '../../access/scope'
import type { Tx } from '../../platform/db'
import { type LedgerEvent, ledgerSchemaVersion } from '../ledger/event'
import { writeEvent } from '../ledger/write-event'

/** Appends an event to the programme's ledger, inside the transaction of what it tells; answers its number. */
export async function appendLedger(tx: Tx, scope: Scope, event: LedgerEvent): Promise<bigint> {
  const payload = writeEvent(event)
  const rows = await tx.$queryRaw<{ seq: bigint }[]>`SELECT append_ledger(${scope.programme}::uuid, ${event.kind},
    ${ledgerSchemaVersion(event.kind)}::int, ${payload}, ${new Date(scope.at)}) AS seq`
  const seq = rows[0]?.seq
  if (seq === undefined) throw new Error('the ledger gave no number')
  return seq
}
