import type { Pair, PairKey } from '../curriculum/edition/curriculum'
import type { SeenAttempt } from './attempt'
import { pairsUnder } from './decide'
import type { Evaluation } from './readiness/evaluation'
import type { TargetFinding } from './readiness/finding'
import { counted, countWord, sentence } from './readiness/grammar'
import { dayName, pairName, type Words } from './readiness/wording'
import type { EpochDay } from './time'

/** What a held pair under a finding rests on: the attempts that its sign-off cited. */
export interface PairEvidence {
  readonly pair: PairKey
  readonly attempts: number
  readonly coaches: number
  /** Of the attempts, those with a moment on video. */
  readonly moments: number
  /** Day of the newest cited attempt; null when nothing was cited (recognised). */
  readonly last: EpochDay | null
}

function evidenceOf(evaluation: Evaluation, pair: PairKey): PairEvidence {
  const cited = new Set(evaluation.holdings.of(pair).by?.evidence ?? [])
  const seen = (evaluation.history(pair)?.attempts ?? []).filter((attempt) => cited.has(attempt.fact.id))
  return {
    pair,
    attempts: seen.length,
    coaches: new Set(seen.flatMap((attempt) => attempt.coaches)).size,
    moments: seen.filter((attempt) => attempt.moments > 0).length,
    last: seen.at(-1)?.fact.day ?? null,
  }
}

/** The evidence under a finding, thinnest first: fewest coaches, then least video, fewest attempts, oldest. */
export function listEvidence(evaluation: Evaluation, found: TargetFinding): PairEvidence[] {
  return pairsUnder(found)
    .map((pair) => evidenceOf(evaluation, pair))
    .sort(
      (a, b) =>
        a.coaches - b.coaches || a.moments - b.moments || a.attempts - b.attempts || (a.last ?? 0) - (b.last ?? 0),
    )
}

/** The thinnest of the evidence in a sentence, for whoever is about to decide on it. */
export function sayEvidence(evidence: PairEvidence, words: Words): string {
  const name = pairName(evidence.pair, words)
  if (evidence.last === null) return sentence(`${name} rests on no attempt that anybody here has rated`)
  const by =
    evidence.coaches === 1 ? 'all seen by one coach' : `seen by ${counted(evidence.coaches, 'coach', 'coaches')}`
  const video = `${evidence.moments === 0 ? 'none' : countWord(evidence.moments)} on video`
  const attempts = counted(evidence.attempts, 'attempt')
  return sentence(`${name} rests on ${attempts}, ${by}, ${video}, the last on ${dayName(evidence.last, words)}`)
}

/** The pair that shows best what a target asks: of the dives under it the one taught latest, else whatever is thinnest. */
export function leadingPair(evaluation: Evaluation, found: TargetFinding): Pair | null {
  const pairs = pairsUnder(found).flatMap((key) => evaluation.curriculum.pairs.get(key) ?? [])
  const dived = pairs.filter((pair) => (evaluation.history(pair.key)?.attempts.length ?? 0) > 0)
  const rank = (pair: Pair): number => pair.level * 2 + (pair.skill.dive === null ? 0 : 1)
  return [...dived].sort((a, b) => rank(b) - rank(a))[0] ?? pairs[0] ?? null
}

/** A moment of the evidence: the dive that it shows, as the rules read it. */
export interface EvidenceMoment<Moment> {
  readonly pair: Pair
  readonly attempt: SeenAttempt
  readonly moment: Moment
}

/**
 * Of a diver's moments, as the views in force show them, those that a finding rests on: of the attempts in its evidence. By
 * skill in reading order, then the oldest dive first.
 */
export function momentsUnder<Moment extends { readonly attempt: string }>(
  { curriculum, history, record }: Evaluation,
  found: TargetFinding,
  moments: readonly Moment[],
): EvidenceMoment<Moment>[] {
  const cited = new Set(found.finding.evidence)
  const order = pairsUnder(found)
  const rank = (pair: PairKey): number => (order.includes(pair) ? order.indexOf(pair) : order.length)
  return record.attempts
    .filter(({ id }) => cited.has(id))
    .sort((a, b) => rank(a.pair) - rank(b.pair))
    .flatMap((fact) => {
      const pair = curriculum.pairs.get(fact.pair)
      const attempt = history(fact.pair)?.attempts.find((one) => one.fact.id === fact.id)
      return pair && attempt
        ? moments.filter((one) => one.attempt === fact.id).map((moment) => ({ pair, attempt, moment }))
        : []
    })
}
