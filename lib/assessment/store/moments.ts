import type { Scope } from '../../access/scope'
import { type Curriculum, type PairKey, pairKey } from '../../curriculum/edition/curriculum'
import type { Rating } from '../../curriculum/model'
import type { Place } from '../../curriculum/place'
import { getEditionInForce } from '../../curriculum/store/editions'
import { asAccount, type Tx } from '../../platform/db'
import { programmeInstant } from '../device-clock'
import type { Mark } from '../mark/mark'
import { dayIn, type EpochDay } from '../time'
import { listCopies } from './copies'
import { type DiverHere, listDivers } from './divers-here'
import { listMarks } from './marks'
import { boardOf, type KeptMeasure, listMeasures } from './measures'

/** A moment with what it shows: who dived what, and when. */
export interface MomentFile {
  readonly curriculum: Curriculum
  readonly diver: DiverHere
  readonly pair: PairKey
  readonly day: EpochDay
  /** The film without its time range; seconds. */
  readonly link: string
  readonly start: number
  readonly end: number | null
  /** Itself, and the same moment in earlier and later views of its coach, oldest first. */
  readonly copies: readonly string[]
  readonly marks: readonly Mark[]
  readonly measures: readonly KeptMeasure[]
  /** Height in metres of the board that was dived from; null where there is none. */
  readonly board: number | null
  /** The explicit ratings of the dive by each coach who rated it, by criterion key; and the coach whose the moment is. */
  readonly rated: ReadonlyMap<string, Readonly<Record<string, Rating>>>
  readonly observer: string
  /** Who marked, measured or rated, and may be named. */
  readonly people: ReadonlyMap<string, { readonly name: string; readonly initials: string }>
}

/** What each coach rated of an attempt, by the observation that stands. */
async function listRated(tx: Tx, attempt: string): Promise<MomentFile['rated']> {
  const heads = await tx.observationHead.findMany({ where: { attemptId: attempt } })
  const rows = await tx.observation.findMany({ where: { id: { in: heads.map(({ observationId }) => observationId) } } })
  return new Map(rows.map(({ coachId, ratings }) => [coachId, ratings as Record<string, Rating>]))
}

/** A moment of a diver in scope, or null: without her consent to video there is none, and an erased link shows nothing. */
export function findMoment(scope: Scope, id: string): Promise<MomentFile | null> {
  return asAccount(scope.account, async (tx) => {
    const moment = await tx.moment.findFirst({ where: { id } })
    const diver = moment && (await listDivers(tx, scope, [moment.diverId]))[0]
    if (!diver || moment.link === null) return null
    const seen = await tx.observation.findFirst({ where: { id: moment.observationId, diverId: diver.id } })
    const attempt = seen && (await tx.attempt.findFirst({ where: { id: seen.attemptId, diverId: diver.id } }))
    if (!attempt) return null
    const marks = await listMarks(tx, id)
    const holding = { skill: attempt.skill, place: attempt.place as Place }
    const board = boardOf({ holding })
    const measures = await listMeasures(tx, id, board)
    const rated = await listRated(tx, attempt.id)
    const worked = [...marks, ...measures].map(({ coach }) => coach)
    const coaches = [...new Set([scope.account, seen.coachId, ...worked])]
    const named = { where: { id: { in: coaches } }, select: { id: true, name: true, initials: true } }
    return {
      curriculum: await getEditionInForce(tx, scope),
      diver,
      pair: pairKey(holding),
      day: dayIn(programmeInstant(attempt.attemptedAt.getTime(), Number(attempt.offsetMs)), diver.zone),
      link: moment.link,
      start: moment.startMs / 1000,
      end: moment.endMs === null ? null : moment.endMs / 1000,
      copies: await listCopies(tx, id),
      marks,
      measures,
      board,
      rated,
      observer: seen.coachId,
      people: new Map((await tx.account.findMany(named)).map((row) => [row.id, row])),
    }
  })
}
