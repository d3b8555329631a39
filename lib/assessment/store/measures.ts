import { v7 as uuidv7 } from 'uuid'
import type { Scope } from '../../access/scope'
import type { Pair } from '../../curriculum/edition/curriculum'
import { placeFacts } from '../../curriculum/place'
import { asAccount, type Tx } from '../../platform/db'
import type { Quantity } from '../measure/measured'
import { type Caution, measureTaken, type Result } from '../measure/take'
import { flightBetween, type OnFrames, type Taken } from '../measure/taken'
import { takenSchema } from '../measure/taken-schema'
import { sayProblem } from '../measure/wording-taken'
import { type Outcome, refuse } from '../outcome'
import { listCopies } from './copies'
import { findMomentPair, listMarks, noMoment } from './marks'

/** A measure that stands: who took it, when, from what, what comes of it and what to look at again. */
export interface KeptMeasure {
  readonly id: string
  /** The copy of the moment that it was taken in. */
  readonly moment: string
  readonly coach: string
  /** The programme's time, in milliseconds. */
  readonly at: number
  readonly taken: Taken
  readonly results: readonly Result[]
  readonly cautions: readonly Caution[]
}

/**
 * What comes of what was placed, by the rules of today. What they can do nothing with any more, such as a distance without a point
 * on the board, shows what the server made of it when it was kept.
 */
function readResults(
  taken: Taken,
  kept: readonly Result[],
  board: number | null,
): Pick<KeptMeasure, 'results' | 'cautions'> {
  const measured = measureTaken(taken, board)
  if (measured.ok) return measured
  return { results: kept, cautions: taken.kind === 'distance' && !taken.points.board ? ['side unknown'] : [] }
}

/**
 * The measures of a moment that nobody took back, oldest first, also those taken before a correction took it along; from a board of so
 * many metres or from none.
 */
export async function listMeasures(tx: Tx, moment: string, board: number | null): Promise<KeptMeasure[]> {
  const rows = await tx.momentMeasure.findMany({
    where: { momentId: { in: [...(await listCopies(tx, moment))] } },
    orderBy: [{ measuredAt: 'asc' }, { id: 'asc' }],
  })
  const takenBack = new Set(rows.map(({ takesBackId }) => takesBackId))
  return rows.flatMap(({ id, momentId, coachId, measuredAt, inputs, results }) => {
    if (inputs === null || takenBack.has(id)) return []
    const taken = takenSchema.parse(inputs) as Taken
    const { results: found, cautions } = readResults(taken, results as unknown as Result[], board)
    return [{ id, moment: momentId, coach: coachId, at: measuredAt.getTime(), taken, results: found, cautions }]
  })
}

/** What a coach asks to keep: points on frames, or a flight between her own marks. Its results are not asked for. */
export interface MeasureRequest {
  readonly moment: string
  readonly taken: OnFrames | { readonly kind: 'flight'; readonly drop: Quantity }
}

/** The height in metres of the board that a pair is done from; null where it is done from none. */
export const boardOf = ({ holding: { place } }: Pick<Pair, 'holding'>): number | null =>
  placeFacts[place].board ? placeFacts[place].height : null

const unmarked = refuse(
  'not marked',
  'A flight is measured between two marks: mark “flight” and “entry” first. Nothing was kept.',
)

/**
 * Keeps a measure with the results that the server computes from what was placed. What cannot be measured is refused. The demo
 * brings ids of its own.
 */
export function keepMeasure(
  scope: Scope,
  { moment, taken: asked }: MeasureRequest,
  id = uuidv7({ msecs: scope.at }),
): Promise<Outcome> {
  return asAccount(scope.account, async (tx) => {
    const pair = await findMomentPair(tx, scope, moment)
    if (pair === null) return noMoment
    if (pair === 'not taught')
      return refuse('not taught', 'The curriculum in force does not teach this skill any more. Nothing was kept.')
    const marks = asked.kind === 'flight' ? await listMarks(tx, moment) : []
    const taken =
      asked.kind === 'flight'
        ? flightBetween(
            marks.filter(({ coach }) => coach === scope.account),
            asked.drop,
          )
        : asked
    if (!taken) return unmarked
    const measured = measureTaken(taken, boardOf(pair))
    if (!measured.ok) return refuse(measured.problem.kind, sayProblem(measured.problem))
    const inputs = takenSchema.parse(taken)
    const results = measured.results.map(({ plausible, ...result }) => ({
      ...result,
      plausible: plausible && { ...plausible },
    }))
    await tx.momentMeasure.create({
      data: { id, momentId: moment, coachId: scope.account, inputs, results, measuredAt: new Date(scope.at) },
    })
    return { ok: true, id }
  })
}

/** Takes back a measure of one's own: it stays in its table and is shown no more. */
export function takeBackMeasure(
  scope: Scope,
  { moment, measure }: { moment: string; measure: string },
): Promise<Outcome> {
  return asAccount(scope.account, async (tx) => {
    if ((await findMomentPair(tx, scope, moment)) === null) return noMoment
    // Only whose they are is asked, not what comes of them.
    const own = (await listMeasures(tx, moment, null)).find(
      ({ id, coach }) => id === measure && coach === scope.account,
    )
    if (!own) return refuse('not yours', 'Only the coach who took a measure takes it back, and only once.')
    const id = uuidv7({ msecs: scope.at })
    await tx.momentMeasure.create({
      data: { id, momentId: own.moment, coachId: scope.account, takesBackId: measure, measuredAt: new Date(scope.at) },
    })
    return { ok: true, id }
  })
}
