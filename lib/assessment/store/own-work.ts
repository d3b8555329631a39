import type { Scope } from '../../access/scope'
import type { Place } from '../../curriculum/place'
import { asAccount } from '../../platform/db'
import type { Mark } from '../mark/mark'
import { momentUrl } from '../moment'
import { listCopied } from './copies'
import { listDivers } from './divers-here'
import { listMarks } from './marks'
import { boardOf, type KeptMeasure, listMeasures } from './measures'

/** A moment of an attempt with what the asking coach alone marked and measured in its film. Seconds. */
export interface OwnWork {
  readonly moment: string
  /** The link with its range, as a look names it. */
  readonly href: string
  readonly start: number
  readonly end: number | null
  readonly marks: readonly Mark[]
  readonly measures: readonly KeptMeasure[]
}

/**
 * The moments of an attempt of a diver in scope, as the views in force show them, each with the coach's own marks and measures:
 * never those of anybody else, for she looks blind. None of another club's diver, whose films only that club works on.
 */
export function readOwnWork(scope: Scope, attempt: string): Promise<OwnWork[]> {
  return asAccount(scope.account, async (tx) => {
    const observed = await tx.observation.findMany({ where: { attemptId: attempt }, select: { diverId: true } })
    const divers = await listDivers(tx, scope, [...new Set(observed.map(({ diverId }) => diverId))])
    const here = divers.map(({ id }) => id)
    const moments = await listCopied(tx, { attemptId: attempt, diverId: { in: here } })
    const dived = await tx.attempt.findFirst({
      where: { id: attempt, diverId: { in: here } },
      select: { skill: true, place: true },
    })
    const board = dived && boardOf({ holding: { skill: dived.skill, place: dived.place as Place } })
    const works: OwnWork[] = []
    for (const { id, link, startMs, endMs, shown } of moments) {
      if (!shown) continue
      const [start, end] = [startMs / 1000, endMs === null ? null : endMs / 1000]
      works.push({
        moment: id,
        href: momentUrl(link, { start, end }),
        start,
        end,
        marks: (await listMarks(tx, id)).filter(({ coach }) => coach === scope.account),
        measures: (await listMeasures(tx, id, board)).filter(({ coach }) => coach === scope.account),
      })
    }
    return works
  })
}
