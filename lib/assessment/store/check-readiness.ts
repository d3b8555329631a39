import type { Scope } from '../../access/scope'
import { getEditionInForce } from '../../curriculum/store/editions'
import { asAccount } from '../../platform/db'
import { dayIn, dayOf } from '../time'
import { type ReadinessRow, readinessOf } from './readiness'
import { listDiverFiles } from './records'

export interface ReadinessCheck {
  readonly divers: number
  readonly rows: number
  /** Rows whose day has come: worked out again when they are next read, and not compared. */
  readonly due: number
  readonly differences: readonly { readonly diver: string; readonly target: string; readonly what: string }[]
}

const shown = (value: unknown): string => (value instanceof Date ? value.toISOString().slice(0, 10) : String(value))

const compared = [
  'status',
  'held',
  'ready',
  'readySince',
  'standing',
  'attemptsLeft',
  'leftExact',
  'waitsFor',
  'editionHash',
  'clubId',
] as const

const isDue = ({ validUntil }: Pick<ReadinessRow, 'validUntil'>, at: number, zone: string): boolean =>
  validUntil !== null && dayOf(validUntil) <= dayIn(at, zone)

function differenceOf(kept: ReadinessRow | undefined, fresh: ReadinessRow): string | null {
  if (!kept) return 'is missing'
  const wrong = compared.filter((name) => shown(kept[name]) !== shown(fresh[name]))
  return wrong.length === 0
    ? null
    : wrong.map((name) => `${name} is ${shown(kept[name])}, should be ${shown(fresh[name])}`).join('; ')
}

/** Compares every kept readiness row with the reference evaluator's answer from all raw rows, read in one batch. */
export function checkReadiness(scope: Scope): Promise<ReadinessCheck> {
  return asAccount(
    scope.account,
    async (tx) => {
      const curriculum = await getEditionInForce(tx, scope)
      const files = await listDiverFiles(tx, scope)
      const kept = new Map(
        (await tx.readiness.findMany({ where: { programmeId: scope.programme } })).map((row) => [
          `${row.diverId} ${row.target}`,
          row,
        ]),
      )
      let due = 0
      const differences: { diver: string; target: string; what: string }[] = []
      for (const file of files) {
        for (const fresh of readinessOf(curriculum, scope.programme, file, scope.at)) {
          const row = kept.get(`${fresh.diverId} ${fresh.target}`)
          kept.delete(`${fresh.diverId} ${fresh.target}`)
          if (row && isDue(row, scope.at, file.zone)) due++
          else {
            const what = differenceOf(row, fresh)
            if (what) differences.push({ diver: fresh.diverId, target: fresh.target, what })
          }
        }
      }
      // Of a diver who has left, rows that are due stand by until a club takes her in.
      for (const row of kept.values())
        if (!isDue(row, scope.at, scope.zone))
          differences.push({ diver: row.diverId, target: row.target, what: 'is kept for nobody' })
      return {
        divers: files.length,
        rows: files.length * (curriculum.levels.length + curriculum.boardMoves.length),
        due,
        differences,
      }
    },
    { timeout: 300_000 },
  )
}
