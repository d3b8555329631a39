import type { PairKey } from '../../curriculum/edition/curriculum'
import { openState } from '../open'
import type { Evaluation } from '../readiness/evaluation'
import { counted, sentence } from '../readiness/grammar'
import type { StandingRow } from '../readiness/standing-row'
import type { WaitsFor } from '../readiness/waits-for'
import { criterionName, stepName, type Words } from '../readiness/wording'
import type { ToWatch } from './contract'

type Standing = Omit<StandingRow, 'readySince'>

/** So many pairs at most. */
const most = 6

/** What was signed and needs to be shown again: in doubt before lapsed. */
function toShowAgain({ curriculum, holdings }: Evaluation): ToWatch[] {
  const said = { 'in doubt': 'Its sign-off is in doubt.', lapsed: 'Its sign-off has lapsed.' } as const
  return (['in doubt', 'lapsed'] as const).flatMap((state) =>
    [...curriculum.pairs.keys()]
      .filter((key) => holdings.of(key).state === state)
      .map((pair) => ({ pair, why: said[state] })),
  )
}

function sayWhy(row: Standing, what: WaitsFor, words: Words): string {
  const left = row.attemptsLeft ?? 0
  const away = `${stepName(row.target, words)} is ${row.leftExact ? '' : 'at most '}${counted(left, 'good attempt')} away`
  return sentence(
    what.kind === 'shortfall' ? `${criterionName(what.criterion, words)} fell short lately; ${away}` : away,
  )
}

/** What the level worked towards and the board moves wait for, the nearest first. */
function towardsTargets(rows: readonly Standing[], level: string, words: Words): ToWatch[] {
  return rows
    .filter(({ target }) => target === `level:${level}` || target.startsWith('move:'))
    .filter(({ standing }) => standing === 'near' || standing === 'held up' || standing === 'on the way')
    .filter(({ attemptsLeft }) => attemptsLeft !== null)
    .sort((a, b) => (a.attemptsLeft ?? 0) - (b.attemptsLeft ?? 0))
    .flatMap((row) =>
      row.waitsFor.flatMap((what) =>
        what.kind === 'pair' || what.kind === 'shortfall' ? [{ pair: what.pair, why: sayWhy(row, what, words) }] : [],
      ),
    )
}

/**
 * What to watch of a diver today: what was signed and has to be shown again, then what the level that she works towards and
 * the board moves wait for. `rows` are her standings; a pair that is closed to her is left out. Advice only.
 */
export function toWatch(evaluation: Evaluation, rows: readonly Standing[], level: string, words: Words): ToWatch[] {
  const found = new Map<PairKey, ToWatch>()
  for (const one of [...toShowAgain(evaluation), ...towardsTargets(rows, level, words)])
    if (!found.has(one.pair) && openState(evaluation, one.pair).state !== 'closed') found.set(one.pair, one)
  return [...found.values()].slice(0, most)
}
