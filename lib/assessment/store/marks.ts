import { v7 as uuidv7 } from 'uuid'
import type { Scope } from '../../access/scope'
import { type Pair, pairKey } from '../../curriculum/edition/curriculum'
import type { Place } from '../../curriculum/place'
import { getEditionInForce } from '../../curriculum/store/editions'
import { asAccount, type Tx } from '../../platform/db'
import { isFrameTime, longestFilm, type Mark, type MarkKey, markKeysOf, standingMarks } from '../mark/mark'
import { type Outcome, refuse } from '../outcome'
import { listCopies } from './copies'
import { listDivers } from './divers-here'

/**
 * The marks that stand in a moment, of all its coaches, also those made before a correction took it along; the rows of a moment
 * that the account may not see are none.
 */
export async function listMarks(tx: Tx, moment: string): Promise<Mark[]> {
  const rows = await tx.momentMark.findMany({
    where: { momentId: { in: [...(await listCopies(tx, moment))] } },
    orderBy: [{ markedAt: 'asc' }, { id: 'asc' }],
  })
  return standingMarks(
    rows.map(({ coachId, phase, atMs, frameUs }) => ({ coach: coachId, key: phase as MarkKey, atMs, frameUs })),
  )
}

/** The pair that a moment shows, for a coach of its diver's club; null when there is no such moment in scope. */
export async function findMomentPair(tx: Tx, scope: Scope, id: string): Promise<Pair | 'not taught' | null> {
  const moment = await tx.moment.findFirst({ where: { id, link: { not: null } } })
  const diver = moment && (await listDivers(tx, scope, [moment.diverId]))[0]
  const seen = diver && (await tx.observation.findFirst({ where: { id: moment.observationId, diverId: diver.id } }))
  const attempt = seen && (await tx.attempt.findFirst({ where: { id: seen.attemptId, diverId: diver.id } }))
  if (!attempt) return null
  const { pairs } = await getEditionInForce(tx, scope)
  return pairs.get(pairKey({ skill: attempt.skill, place: attempt.place as Place })) ?? 'not taught'
}

/** What refuses a moment that is out of reach. */
export const noMoment: Outcome = refuse(
  'not found',
  'This moment is not there any more: the diver has moved, or the consent to video was withdrawn. Nothing was kept.',
)

/** A mark to keep; without a time it takes the coach's own mark back. */
export interface MarkRequest {
  readonly moment: string
  readonly key: string
  readonly atMs: number | null
  readonly frameUs: number | null
}

/** Keeps a coach's mark, or takes it back. What is odd is kept; what cannot be is refused. The demo brings ids of its own. */
export function keepMark(
  scope: Scope,
  { moment, key, atMs, frameUs }: MarkRequest,
  id = uuidv7({ msecs: scope.at }),
): Promise<Outcome> {
  return asAccount(scope.account, async (tx) => {
    const pair = await findMomentPair(tx, scope, moment)
    if (pair === null) return noMoment
    if (pair === 'not taught')
      return refuse('not taught', 'The curriculum in force does not name the phases of this skill.')
    if (!markKeysOf(pair.skill.phaseSet).some((one) => one === key))
      return refuse('no such phase', `This skill has no phase “${key}”. Nothing was marked.`)
    if (atMs !== null && !(Number.isInteger(atMs) && atMs >= 0 && atMs <= longestFilm))
      return refuse('no such time', 'No film has a frame at that time. Nothing was marked.')
    if (frameUs !== null && !isFrameTime(frameUs))
      return refuse('no such frame', 'A frame lasts from a thousandth of a second to a second. Nothing was marked.')
    const data = {
      id,
      momentId: moment,
      coachId: scope.account,
      phase: key,
      atMs,
      frameUs,
      markedAt: new Date(scope.at),
    }
    await tx.momentMark.create({ data })
    return { ok: true, id }
  })
}
