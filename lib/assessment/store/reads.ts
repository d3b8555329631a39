import type { Scope } from '../../access/scope'
import type { Curriculum } from '../../curriculum/edition/curriculum'
import { getEditionInForce } from '../../curriculum/store/editions'
import { asAccount, type Tx } from '../../platform/db'
import { listCopied } from './copies'
import { type DiverQuestions, readQuestions } from './questions'
import { type DiverFile, findDiverFile, listDiverFiles } from './records'

/** The names that stand beside what people wrote: by account id. */
export interface Person {
  readonly name: string
  readonly initials: string
}

/** What a desk or region page works on: the edition in force, the divers in scope, and who wrote what. */
export interface Desk {
  readonly curriculum: Curriculum
  readonly files: readonly DiverFile[]
  readonly people: ReadonlyMap<string, Person>
}

/** Everybody whose name may stand beside what she wrote. */
export async function listPeople(tx: Tx): Promise<ReadonlyMap<string, Person>> {
  const rows = await tx.account.findMany({ select: { id: true, name: true, initials: true } })
  return new Map(rows.map((row) => [row.id, row]))
}

/** All divers in scope, or those named, as of now. */
export function readDesk(scope: Scope, only?: readonly string[]): Promise<Desk> {
  return asAccount(scope.account, async (tx) => ({
    curriculum: await getEditionInForce(tx, scope),
    files: await listDiverFiles(tx, scope, only),
    people: await listPeople(tx),
  }))
}

export interface DiverMoment {
  readonly id: string
  readonly attempt: string
  readonly observation: string
  readonly link: string
  readonly startMs: number
  readonly endMs: number | null
}

/** One diver with what her page shows beside her record. */
export interface DiverDesk extends Omit<Desk, 'files'> {
  readonly file: DiverFile
  /** As the views in force show them, and what was linked beside them. */
  readonly moments: readonly DiverMoment[]
  /** Notes and reasons by the id of the observation, sign-off or decision that they belong to. */
  readonly words: ReadonlyMap<string, string>
  /** What the diver wanted on a board move, by the id of the decision. */
  readonly wishes: ReadonlyMap<string, 'yes' | 'not yet'>
  /** What was asked about her moments, beside the record. */
  readonly questions: DiverQuestions
}

/** One diver in scope, or null: outside the scope she does not exist. */
export function readDiver(scope: Scope, diver: string): Promise<DiverDesk | null> {
  return asAccount(scope.account, async (tx) => {
    const file = await findDiverFile(tx, scope, diver)
    if (!file) return null
    const about = { where: { diverId: diver } }
    const texts = new Map((await tx.words.findMany(about)).map((row) => [row.id, row.text]))
    const observations = await tx.observation.findMany({
      ...about,
      select: { id: true, noteId: true, reasonId: true },
    })
    const decisions = await tx.decision.findMany({ ...about, select: { id: true, reasonId: true, diverWants: true } })
    const reasoned = [
      ...observations.map((row) => ({ id: row.id, words: row.noteId ?? row.reasonId })),
      ...(await tx.signOff.findMany({ ...about, select: { id: true, reasonId: true } })).map((row) => ({
        id: row.id,
        words: row.reasonId,
      })),
      ...decisions.map((row) => ({ id: row.id, words: row.reasonId })),
    ]
    const moments = (await listCopied(tx, { diverId: diver })).filter(({ shown }) => shown)
    return {
      curriculum: await getEditionInForce(tx, scope),
      people: await listPeople(tx),
      questions: (await readQuestions(tx, [diver]))(diver),
      file,
      words: new Map(
        reasoned.flatMap(({ id, words }) => {
          const text = words ? texts.get(words) : null
          return text ? [[id, text] as const] : []
        }),
      ),
      wishes: new Map(
        decisions.flatMap(({ id, diverWants }) =>
          diverWants === 'yes' || diverWants === 'not yet' ? [[id, diverWants] as const] : [],
        ),
      ),
      moments: moments
        .map(({ id, view, observation, link, startMs, endMs }) => ({
          ...{ id, attempt: view.attempt, observation, link, startMs, endMs },
        }))
        .sort((a, b) => (a.id < b.id ? -1 : 1)),
    }
  })
}

/** One diver with the edition in force at an instant that may depend on her club's zone; null outside the scope. */
export function readDiverAsOf(
  scope: Scope,
  diver: string,
  at: (zone: string) => number,
): Promise<{ readonly file: DiverFile; readonly curriculum: Curriculum } | null> {
  return asAccount(scope.account, async (tx) => {
    const file = await findDiverFile(tx, scope, diver)
    return file && { file, curriculum: await getEditionInForce(tx, scope, at(file.zone)) }
  })
}
