import { v7 as uuidv7 } from 'uuid'
import type { Scope } from '../../access/scope'
import { asAccount, type Tx } from '../../platform/db'
import { type Outcome, refuse } from '../outcome'
import { dateOf, dayOf, type EpochDay } from '../time'
import { lockDiver, notFound } from './desk'
import { keepWords } from './words'

/** The days on which growth was noted of some divers, in one query. */
export async function listGrowth(tx: Tx, divers: readonly string[]): Promise<(diver: string) => EpochDay[]> {
  const rows = await tx.growthNote.findMany({ where: { diverId: { in: [...divers] } } })
  return (diver) => rows.filter((row) => row.diverId === diver).map((row) => dayOf(row.notedOn))
}

/** A coach notes that a diver has grown quickly: nothing follows from it but care. `notedOn` is a day of the club. */
export function noteGrowth(
  scope: Scope,
  note: { readonly diver: string; readonly notedOn: EpochDay; readonly words: string },
): Promise<Outcome> {
  return asAccount(scope.account, async (tx) => {
    const now = await lockDiver(tx, scope, note.diver)
    if (!now) return notFound
    const { file, evaluation } = now
    if (note.notedOn > evaluation.date.day)
      return refuse('not yet', 'That day has not come: name the day on which you saw it.', 'notedOn')
    const about = { club: file.club, diver: file.id, writtenBy: scope.account }
    const words = note.words.trim() ? await keepWords(tx, about, note.words.trim()) : null
    const id = uuidv7({ msecs: scope.at })
    await tx.growthNote.create({
      data: {
        id,
        clubId: file.club,
        diverId: file.id,
        notedOn: dateOf(note.notedOn),
        by: scope.account,
        at: new Date(scope.at),
        noteId: words?.id ?? null,
      },
    })
    return { ok: true, id }
  })
}
