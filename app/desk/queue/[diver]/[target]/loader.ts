import { notFound } from 'next/navigation'
import type { Act } from '@/app/desk/_components/panels'
import { type AttemptLine, toLines } from '@/app/desk/loader'
import { type Asking, type QuestionView, toQuestion } from '@/app/desk/questions/loader'
import { canDecide } from '@/lib/access/can'
import { coachingScopeOf } from '@/lib/access/scope'
import { requireHeadCoach } from '@/lib/access/session'
import { listCautions } from '@/lib/assessment/against'
import { type ArcSubject, arcSubject } from '@/lib/assessment/arc-subject'
import { basisOf } from '@/lib/assessment/basis'
import { coachesUnder, pairsUnder } from '@/lib/assessment/decide'
import { leadingPair, listEvidence, momentsUnder, sayEvidence } from '@/lib/assessment/evidence'
import { tallyChecks } from '@/lib/assessment/moment-check'
import { type Question, questionsUnder, standingQuestions } from '@/lib/assessment/question'
import { type Evaluation, evaluationOf } from '@/lib/assessment/readiness/evaluation'
import { type ExplainedNode, explain } from '@/lib/assessment/readiness/explain'
import type { TargetFinding } from '@/lib/assessment/readiness/finding'
import { midSentence } from '@/lib/assessment/readiness/grammar'
import { sayBlock } from '@/lib/assessment/readiness/say-block'
import { sayCaution } from '@/lib/assessment/readiness/say-caution'
import { sayDecision } from '@/lib/assessment/readiness/say-decision'
import { sayMoments, saySaid, sayTally } from '@/lib/assessment/readiness/say-question'
import { sayTarget } from '@/lib/assessment/readiness/say-target'
import { readTarget } from '@/lib/assessment/readiness/targets'
import { dayName, pairName, stepName, type Words } from '@/lib/assessment/readiness/wording'
import type { TargetKey } from '@/lib/assessment/record'
import { reasonKey } from '@/lib/assessment/store/questions'
import { readDiver } from '@/lib/assessment/store/reads'
import { decisionsOn, targetKeyIn } from '@/lib/assessment/target-hold'
import { asOfInstant } from '@/lib/assessment/time'
import { systemClock } from '@/lib/platform/clock'

export interface DecisionPage {
  readonly diver: { readonly id: string; readonly name: string; readonly href: string; readonly margin: string }
  readonly target: TargetKey
  /** Its own address. */
  readonly href: string
  readonly step: string
  readonly isMove: boolean
  readonly headline: string
  readonly ready: boolean
  readonly held: 'no' | 'approved' | 'recognised' | 'to review'
  readonly blocks: readonly string[]
  readonly thinnest: string | null
  /** What speaks against it without stopping it. */
  readonly cautions: readonly string[]
  /** Earlier decisions on it, newest first, with their reasons and what the diver wanted. */
  readonly before: readonly {
    readonly id: string
    readonly sentence: string
    readonly reason: string | null
    /** What it said of the questions that stood. */
    readonly said: readonly string[]
  }[]
  /** The way to the moments of its evidence, named, and how far the reader has come with them. */
  readonly review: { readonly href: string; readonly moments: string; readonly tally: string | null } | null
  /** The questions about its evidence that stand. */
  readonly questions: readonly QuestionView[]
  readonly acts: readonly Act[]
  readonly finding: ExplainedNode
  readonly pairs: readonly {
    readonly key: string
    readonly name: string
    readonly href: string
    readonly current: boolean
  }[]
  readonly shown: { readonly name: string; readonly arc: ArcSubject; readonly lines: readonly AttemptLine[] } | null
}

const linesShown = 8

/** What may be done about a target now: nothing that would be refused as it stands. */
export function actsOn(
  evaluation: Evaluation,
  found: TargetFinding,
  asking: Asking & { readonly standing: readonly Question[] },
): Act[] {
  const { target } = found
  const { diver, reader, words, standing } = asking
  const on = { diver, target, basis: basisOf(evaluation, found, standing) }
  const alone = coachesUnder(evaluation, found).every((coach) => coach === reader)
  const questions = questionsUnder(standing, found).map((one) => toQuestion(asking, one))
  const isMove = target.startsWith('move:')
  const pairs = pairsUnder(found).map((key) => ({ key, name: pairName(key, words) }))
  const waived = readTarget(evaluation, target, { age: true })
  const overridable = found.finding.status !== 'met' && waived.ready
  return [
    ...(found.ready
      ? [{ act: 'approve', on, isMove, alone, questions } as const, { act: 'return', on, pairs } as const]
      : []),
    ...(overridable ? [{ act: 'override', on, isMove, alone, questions } as const] : []),
    ...(found.held === 'no' ? [] : [{ act: 'withdraw', on } as const]),
  ]
}

/** A step of a diver before her head coach, as it is now; a diver or target outside her clubs is not found. */
export async function loadStep(diver: string, encoded: string) {
  const actor = await requireHeadCoach()
  const scope = coachingScopeOf(actor, systemClock())
  const target = decodeURIComponent(encoded) as TargetKey
  const desk = /^[0-9a-f-]{36}$/.test(diver) ? await readDiver(scope, diver) : null
  if (!desk || !canDecide(actor, desk.file.club) || targetKeyIn(desk.curriculum, target) === null) notFound()
  const { curriculum, file, people, moments, questions } = desk
  const date = asOfInstant(scope.at, file.zone)
  const evaluation = evaluationOf(curriculum, file.record, date)
  const words: Words = { curriculum, today: date.day, diver: file.givenName }
  const { attempts } = evaluation.record
  const asking = {
    ...{ diver: file.id, zone: file.zone, attempts, questions, people, words, reader: actor.account },
    shown: new Set(moments.map(({ id }) => id)),
    standing: standingQuestions(questions, attempts),
  }
  const found = readTarget(evaluation, target)
  const href = `/desk/queue/${file.id}/${encodeURIComponent(target)}`
  return { desk, evaluation, words, asking, found, href, evidence: momentsUnder(evaluation, found, moments) }
}

type Step = Awaited<ReturnType<typeof loadStep>>

/** The way to the moments of the evidence, and how far she has come with them; null where nothing is on video. */
function toReview({ desk, asking, evidence, href }: Step): DecisionPage['review'] {
  const ids = evidence.map(({ moment }) => moment.id)
  const tally = tallyChecks(desk.questions.checks, ids, asking.reader)
  return ids.length === 0 ? null : { href: `${href}/evidence`, moments: sayMoments(tally), tally: sayTally(tally) }
}

/** Earlier decisions, newest first, each with what it said of the questions that stood. */
function toBefore({ desk, evaluation, words, asking, found }: Step): DecisionPage['before'] {
  const { people, questions } = desk
  const saidAt = (decision: string) =>
    questions.said
      .filter((one) => one.decision === decision)
      .map(({ question, how }) => {
        const fact = evaluation.record.attempts.find(
          ({ id }) => id === questions.checks.find((check) => check.id === question)?.attempt,
        )
        const about = fact ? `${midSentence(pairName(fact.pair, words))}, ${dayName(fact.day, words)},` : 'a dive'
        const reason = questions.reasons.get(reasonKey(decision, question))
        return `${saySaid(about, how)}${reason ? ` “${reason}”` : ''}`
      })
  return decisionsOn(asking.words.curriculum, evaluation.record, found.target)
    .map((decision) => {
      const by = people.get(decision.by)?.name ?? 'a head coach'
      const sentence = sayDecision(decision, desk.wishes.get(decision.id) ?? null, by, words)
      return { id: decision.id, sentence, reason: desk.words.get(decision.id) ?? null, said: saidAt(decision.id) }
    })
    .reverse()
}

/** What a head coach decides on; a diver or target outside her clubs is not found. */
export async function loadDecision(diver: string, encoded: string, wanted: string | undefined): Promise<DecisionPage> {
  const step = await loadStep(diver, encoded)
  const { desk, evaluation, words, asking, found, href: here } = step
  const { curriculum, file, people, moments } = desk
  const { target } = found
  const keys = pairsUnder(found)
  const pair = curriculum.pairs.get(
    keys.find((key) => key === wanted) ?? leadingPair(evaluation, found)?.key ?? '@floor',
  )
  const attempts = pair ? (evaluation.history(pair.key)?.attempts ?? []).slice(-linesShown) : []
  const level = pair ? (evaluation.holdings.of(pair.key).by?.level ?? pair.level) : 0
  const thinnest = listEvidence(evaluation, found)[0]
  return {
    diver: {
      id: file.id,
      name: `${file.givenName} ${file.familyName}`,
      href: `/desk/divers/${file.id}`,
      margin: file.squads.join(', '),
    },
    target,
    href: here,
    step: stepName(target, words),
    isMove: target.startsWith('move:'),
    headline: sayTarget(found, words).headline,
    ready: found.ready,
    held: found.held,
    blocks: found.blocks.map((block) => sayBlock(block, words)),
    thinnest: thinnest ? sayEvidence(thinnest, words) : null,
    cautions: listCautions(evaluation, found).map((caution) => sayCaution(caution, words)),
    before: toBefore(step),
    review: toReview(step),
    questions: questionsUnder(asking.standing, found).map((one) => toQuestion(asking, one)),
    acts: actsOn(evaluation, found, asking),
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
  }
}
