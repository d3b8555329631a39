import type { TargetKey } from '../record'
import type { EpochDay } from '../time'
import type { Status, TargetFinding } from './finding'
import { type DiverDates, type Standing, standingOf } from './target-standing'
import { type WaitsFor, waitsFor } from './waits-for'

/** How a diver stands to a target, as lists and counts need it: the answer without its finding. */
export interface StandingRow {
  readonly target: TargetKey
  readonly status: Status
  readonly held: TargetFinding['held']
  readonly ready: boolean
  /** Null when it is not ready. */
  readonly readySince: EpochDay | null
  readonly standing: Standing
  /** The fewest further good called attempts; null when it is held, can never be met, or lies above the next level. */
  readonly attemptsLeft: number | null
  /** False where `attemptsLeft` is only the most that it can take. */
  readonly leftExact: boolean
  /** What to talk about first comes first; empty when it is ready, or approved and nothing blocks it. */
  readonly waitsFor: readonly WaitsFor[]
}

/** The row of a target, all but since when it is ready, which takes the days before (ready-since.ts). */
export function standingRow(dates: DiverDates, target: TargetKey): Omit<StandingRow, 'readySince'> {
  const { standing, found, left } = standingOf(dates, target)
  const { held, ready, finding } = found
  const count = left?.kind === 'count' ? left : null
  return {
    target,
    status: finding.status,
    held,
    ready,
    standing,
    attemptsLeft: count?.attempts ?? null,
    leftExact: count?.exact ?? true,
    waitsFor: waitsFor(found),
  }
}
