import type { Scope } from '../../access/scope'
import type { Curriculum } from '../../curriculum/edition/curriculum'
import { getEditionInForce } from '../../curriculum/store/editions'
import type { Tx } from '../../platform/db'
import { refuse } from '../outcome'
import { type Evaluation, evaluationOf } from '../readiness/evaluation'
import type { Words } from '../readiness/wording'
import { asOfInstant } from '../time'
import { lockDivers } from './lock'
import { type DiverFile, findDiverFile } from './records'

/** One diver under the edition in force, now, inside a transaction that holds her row. */
export interface DiverNow {
  readonly file: DiverFile
  readonly curriculum: Curriculum
  readonly evaluation: Evaluation
  readonly words: Words
}

/** What `lockDiver`'s null means to whoever asked: outside the scope a diver does not exist. */
export const notFound = refuse(
  'not found',
  'No diver of your clubs is found there. She may have moved to another club.',
)

/**
 * Locks the diver's row and reads her afresh: two decisions on her are made one after the other, each on what the first
 * left. Null when she is outside the scope: `notFound` says so.
 */
export async function lockDiver(tx: Tx, scope: Scope, diver: string): Promise<DiverNow | null> {
  await lockDivers(tx, [diver])
  const file = await findDiverFile(tx, scope, diver)
  if (!file) return null
  const curriculum = await getEditionInForce(tx, scope)
  const date = asOfInstant(scope.at, file.zone)
  return {
    file,
    curriculum,
    evaluation: evaluationOf(curriculum, file.record, date),
    words: { curriculum, today: date.day, diver: file.givenName },
  }
}
