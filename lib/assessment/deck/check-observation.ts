import type { Curriculum, Pair } from '../../curriculum/edition/curriculum'
import type { Rating } from '../../curriculum/model'
import { placeFacts } from '../../curriculum/place'
import type { ObservationItem } from './contract'
import { type Refusal, refusal } from './refusal'

type Checked =
  | { readonly ok: true; readonly imputed: Record<string, Rating> }
  | { readonly ok: false; readonly refusal: Refusal }

const named = (pair: Pair): string => `${pair.skill.title} at ${placeFacts[pair.holding.place].label}`

const refuse = (...parts: Parameters<typeof refusal>): Checked => ({ ok: false, refusal: refusal(...parts) })

/** Nothing was rated, marked, noted or linked. */
export const isSilent = (item: ObservationItem): boolean =>
  Object.keys(item.ratings).length === 0 &&
  !item.restAsExpected &&
  item.faults.length === 0 &&
  item.note === null &&
  item.moments.length === 0

/**
 * Whether what a coach rated fits the skill under the observation's own edition, and the lower bounds that
 * "rest as expected" stands for: of each unrated criterion that is not critical, what `level` (an index) expects.
 */
export function checkObservation(curriculum: Curriculum, pair: Pair, level: number, item: ObservationItem): Checked {
  const attached = new Map(pair.criteria.map((entry) => [entry.criterion.key, entry]))
  for (const key of Object.keys(item.ratings)) {
    if (attached.has(key)) continue
    const title = curriculum.criteria.get(key)?.title
    const what = title ? `"${title}" does not apply to ${named(pair)}` : `the edition has no criterion "${key}"`
    return refuse('criterion does not apply', `${what}: leave it out`, `ratings.${key}`)
  }
  const faults = new Set(pair.criteria.flatMap((entry) => entry.criterion.faults))
  const strange = item.faults.find((key) => !faults.has(key))
  if (strange !== undefined) {
    const seen = curriculum.faults.get(strange)?.seen ?? strange
    return refuse('fault does not apply', `"${seen}" is not a fault of ${named(pair)}: leave it out`, 'faults')
  }
  if (isSilent(item)) {
    return refuse(
      'nothing rated',
      'nothing was rated, marked or noted: rate a criterion, or discard the attempt',
      'ratings',
    )
  }
  const imputed: Record<string, Rating> = {}
  for (const { criterion, expects } of item.restAsExpected ? pair.criteria : []) {
    const expected = expects[level] ?? 0
    if (!criterion.critical && item.ratings[criterion.key] === undefined && expected > 0)
      imputed[criterion.key] = expected
  }
  return { ok: true, imputed }
}
