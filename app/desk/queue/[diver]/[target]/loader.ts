import { notFound } from 'next/navigation'
import { type AttemptLine, toLines } from '@/app/desk/loader'
import { canDecide } from '@/lib/access/can'
import { coachingScopeOf } from '@/lib/access/scope'
import { requireHeadCoach } from '@/lib/access/session'
import { type ArcSubject, arcSubject } from '@/lib/assessment/arc-subject'
import { coachesUnder, pairsUnder } from '@/lib/assessment/decide'
import { leadingPair, listEvidence, sayEvidence } from '@/lib/assessment/evidence'
import { evaluationOf } from '@/lib/assessment/readiness/evaluation'
import { type ExplainedNode, explain } from '@/lib/assessment/readiness/explain'
import { sayBlock } from '@/lib/assessment/readiness/say-block'
import { sayTarget } from '@/lib/assessment/readiness/say-target'
import { overridesUnder, readTarget } from '@/lib/assessment/readiness/targets'
import { pairName, stepName, type Words } from '@/lib/assessment/readiness/wording'
import type { TargetKey } from '@/lib/assessment/record'
import { readDiver } from '@/lib/assessment/store/reads'
import { targetKeyIn } from '@/lib/assessment/target-hold'
import { asOfInstant } from '@/lib/assessment/time'
import { systemClock } from '@/lib/platform/clock'

export interface DecisionPage {
  readonly diver: { readonly id: string; readonly name: string; readonly href: string; readonly margin: string }
  readonly target: TargetKey
  readonly step: string
  readonly isMove: boolean
  readonly headline: string
  readonly ready: boolean
  readonly held: 'no' | 'approved' | 'recognised' | 'to review'
  readonly blocks: readonly string[]
  readonly thinnest: string | null
  readonly byOverride: boolean
  readonly finding: ExplainedNode
  readonly pairs: readonly {
    readonly key: string
    readonly name: string
    readonly href: string
    readonly current: boolean
  }[]
  readonly shown: { readonly name: string; readonly arc: ArcSubject; readonly lines: readonly AttemptLine[] } | null
  /** The decider is the only coach in the evidence and must say why. */
  readonly alone: boolean
  /** Only age stands against it: an override may waive that. */
  readonly overridable: boolean
}

const linesShown = 8

/** What a head coach decides on; a diver or target outside her clubs is not found. */
export async function loadDecision(diver: string, encoded: string, wanted: string | undefined): Promise<DecisionPage> {
  const actor = await requireHeadCoach()
  const scope = coachingScopeOf(actor, systemClock())
  const target = decodeURIComponent(encoded) as TargetKey
  const desk = /^[0-9a-f-]{36}$/.test(diver) ? await readDiver(scope, diver) : null
  if (!desk || !canDecide(actor, desk.file.club) || targetKeyIn(desk.curriculum, target) === null) notFound()
  const { curriculum, file, people, moments } = desk
  const date = asOfInstant(scope.at, file.zone)
  const evaluation = evaluationOf(curriculum, file.record, date)
  const words: Words = { curriculum, today: date.day, diver: file.givenName }
  const found = readTarget(evaluation, target)
  const keys = pairsUnder(found)
  const pair = curriculum.pairs.get(
    keys.find((key) => key === wanted) ?? leadingPair(evaluation, found)?.key ?? '@floor',
  )
  const attempts = pair ? (evaluation.history(pair.key)?.attempts ?? []).slice(-linesShown) : []
  const level = pair ? (evaluation.holdings.of(pair.key).by?.level ?? pair.level) : 0
  const thinnest = listEvidence(evaluation, found)[0]
  const waived = readTarget(evaluation, target, { age: true })
  const here = `/desk/queue/${file.id}/${encodeURIComponent(target)}`
  return {
    diver: {
      id: file.id,
      name: `${file.givenName} ${file.familyName}`,
      href: `/desk/divers/${file.id}`,
      margin: file.squads.join(', '),
    },
    target,
    step: stepName(target, words),
    isMove: target.startsWith('move:'),
    headline: sayTarget(found, words).headline,
    ready: found.ready,
    held: found.held,
    blocks: found.blocks.map((block) => sayBlock(block, words)),
    thinnest: thinnest ? sayEvidence(thinnest, words) : null,
    byOverride: overridesUnder(evaluation, found.finding).length > 0,
    finding: explain(found.finding, words),
    pairs: keys.map((key) => ({
      key,
      name: pairName(key, words),
      href: `${here}?pair=${encodeURIComponent(key)}`,
      current: key === pair?.key,
    })),
    shown: pair
      ? {
          name: pairName(pair.key, words),
          arc: arcSubject(curriculum, pair, attempts, level),
          lines: toLines({ evaluation, words, people, moments }, pair, attempts, level),
        }
      : null,
    alone: coachesUnder(evaluation, found).every((coach) => coach === actor.account),
    overridable: found.finding.status !== 'met' && waived.finding.status === 'met' && waived.blocks.length === 0,
  }
}
