import type { PairKey } from '../curriculum/edition/curriculum'
import { pairsUnder } from './decide'
import { listEvidence } from './evidence'
import { lapseOf } from './lists'
import { raisedIn } from './raise'
import type { Evaluation } from './readiness/evaluation'
import type { TargetFinding } from './readiness/finding'
import { overridesUnder } from './readiness/targets'
import type { EpochDay } from './time'

type AboutPairs = 'raised' | 'flagged' | 'recognised only' | 'one coach' | 'no video'

/** What speaks against a level or board move and yet does not stop it: the head coach weighs it. */
export type Caution =
  | { readonly kind: 'by override' }
  | { readonly kind: AboutPairs; readonly pairs: readonly PairKey[] }
  | { readonly kind: 'lapses soon'; readonly pair: PairKey; readonly day: EpochDay }

const some = (kind: AboutPairs, pairs: PairKey[]): Caution[] => (pairs.length > 0 ? [{ kind, pairs }] : [])

/** The cautions under a finding, the gravest first. What stops it stands in `found.blocks`. */
export function listCautions(evaluation: Evaluation, found: TargetFinding): Caution[] {
  const { record, curriculum, holdings, date } = evaluation
  const pairs = pairsUnder(found)
  const evidence = listEvidence(evaluation, found)
  const attemptsAt = (key: PairKey) => record.attempts.filter((attempt) => attempt.pair === key)
  const raised = pairs.filter((key) => {
    const pair = curriculum.pairs.get(key)
    return pair && attemptsAt(key).some((attempt) => raisedIn(pair, attempt).length > 0)
  })
  const flagged = pairs.filter((key) => attemptsAt(key).some((one) => one.closedThen && one.releasedAt === null))
  const where = (test: (one: (typeof evidence)[number]) => boolean) => evidence.filter(test).map(({ pair }) => pair)
  const soon = pairs.flatMap((pair): Caution[] => {
    const { by } = holdings.of(pair)
    return by && lapseOf(by, date.day) === 'soon' ? [{ kind: 'lapses soon', pair, day: by.validUntil }] : []
  })
  return [
    ...(overridesUnder(evaluation, found.finding).length > 0 ? [{ kind: 'by override' } as const] : []),
    ...some('raised', raised),
    ...some('flagged', flagged),
    ...some(
      'recognised only',
      where(({ last }) => last === null),
    ),
    ...some(
      'one coach',
      where(({ last, coaches }) => last !== null && coaches < 2),
    ),
    ...some(
      'no video',
      where(({ last, moments }) => last !== null && moments === 0),
    ),
    ...soon,
  ]
}
