import { pairKey } from '../curriculum/edition/curriculum'
import type { LayOffRule } from '../curriculum/model'
import type { Place } from '../curriculum/place'
import type { Evaluation } from './readiness/evaluation'
import type { Block } from './readiness/finding'
import type { EpochDay } from './time'
import { successesSince } from './validity'

type LayOff = Extract<Block, { kind: 'lay-off' }>

/** The last day at the place before its newest gap of more than `afterDays`; null when there was none. */
function lastDayBefore({ place, afterDays }: LayOffRule, { record, date }: Evaluation): EpochDay | null {
  const days = record.attempts
    .filter(({ pair, day }) => pair.endsWith(`@${place}`) && day <= date.day)
    .map(({ day }) => day)
    .sort((a, b) => a - b)
  const next = (index: number) => days[index + 1] ?? date.day
  return days.findLast((day, index) => next(index) - day > afterDays) ?? null
}

/**
 * The lay-off that closes a place: nobody saw the diver there for more than the rule's days, and of its re-entry steps
 * some have had no success since. Whoever never dived there has nothing to come back to.
 */
export function layOffAt(evaluation: Evaluation, place: Place): LayOff | null {
  const rule = evaluation.curriculum.layOff.find((rule) => rule.place === place)
  const since = rule ? lastDayBefore(rule, evaluation) : null
  if (!rule || since === null) return null
  const waiting = rule.reentry.map(pairKey).filter((key) => {
    const history = evaluation.history(key)
    if (!history) return false
    const shown = successesSince(history, history.pair.level, Number.NEGATIVE_INFINITY)
    return !shown.some(({ day }) => day > since + rule.afterDays)
  })
  return waiting.length === 0 ? null : { kind: 'lay-off', place, since, reentry: waiting }
}
