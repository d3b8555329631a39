import { pairKey } from '../../curriculum/edition/curriculum'
import type { Rating } from '../../curriculum/model'
import type { CriterionLeaf } from '../../curriculum/requirement/model'
import { byDive } from '../as-of'
import type { SeenAttempt } from '../attempt'
import type { PairHistory } from '../history'
import { shortfallOf, shortLately } from '../standing'
import type { Evaluation } from './evaluation'
import type { Finding } from './finding'
import { leafFinding, notInEdition } from './leaf'

const byPlace = (a: SeenAttempt, b: SeenAttempt): number => a.at - b.at || byDive(a.fact, b.fact)

/** The last called attempts at any of the pairs, within the window, that rated the criterion explicitly; oldest first. */
function lastRated(leaf: CriterionLeaf, histories: readonly PairHistory[], today: number): SeenAttempt[] {
  return histories
    .flatMap(({ attempts }) => attempts)
    .filter(({ earns, explicit, fact }) => earns && explicit.has(leaf.criterion) && fact.day > today - leaf.withinDays)
    .sort(byPlace)
    .slice(-leaf.of)
}

/**
 * `times` of the last `of` explicit ratings reached. A critical criterion is unmet, whatever the count, while it fell
 * short in any of the last `clean` attempts in which it was rated, at any pair that the leaf names.
 */
export function criterionFinding(leaf: CriterionLeaf, { curriculum, history, date }: Evaluation): Finding {
  const { criterion, times, of } = leaf
  const known = curriculum.criteria.get(criterion)
  if (!known) return notInEdition(leaf, criterion)
  const histories = leaf.at.flatMap((at) => history(pairKey(at)) ?? [])
  if (histories.length === 0) return notInEdition(leaf, leaf.at.map(pairKey).join(', '))
  const asked = leaf.rating as Rating
  if (known.critical) {
    const short = histories.flatMap((read) => shortLately(read, criterion, asked)).sort(byPlace)
    const newest = short.at(-1)
    if (newest) {
      const shortfall = shortfallOf(newest, criterion, asked)
      return leafFinding(leaf, 'unmet', { code: 'criterion shortfall', criterion, shortfall }, [shortfall.attempt])
    }
  }
  const last = lastRated(leaf, histories, date.day)
  const evidence = last.map(({ fact }) => fact.id)
  const reached = last.filter(({ explicit }) => (explicit.get(criterion) ?? 0) >= asked).length
  const fell = last.length - reached
  if (reached >= times)
    return leafFinding(leaf, 'met', { code: 'rated', criterion, reached, times, of: last.length }, evidence)
  return fell > of - times
    ? leafFinding(leaf, 'unmet', { code: 'fell short', criterion, fell, of: last.length, rating: asked }, evidence)
    : leafFinding(leaf, 'unproven', { code: 'rated too seldom', criterion, reached, times, of }, evidence)
}
