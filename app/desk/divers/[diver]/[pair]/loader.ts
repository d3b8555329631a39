import { notFound } from 'next/navigation'
import { type AttemptLine, toLines } from '@/app/desk/loader'
import { canDecide, canSign } from '@/lib/access/can'
import { type ArcSubject, arcSubject } from '@/lib/assessment/arc-subject'
import { openState, signable } from '@/lib/assessment/open'
import { findPrerequisite } from '@/lib/assessment/readiness/evaluate'
import { type ExplainedNode, explain } from '@/lib/assessment/readiness/explain'
import { sayBlock } from '@/lib/assessment/readiness/say-block'
import { sayReason } from '@/lib/assessment/readiness/say-reason'
import { dayName, levelName, pairName } from '@/lib/assessment/readiness/wording'
import { standardOf } from '@/lib/assessment/standard'
import type { PairKey } from '@/lib/curriculum/edition/curriculum'
import { loadDiverNow } from '../loader'

export interface SignedView {
  readonly id: string
  readonly sentence: string
  readonly reason: string | null
  readonly revocable: boolean
}

export interface PairPage {
  readonly diver: { readonly id: string; readonly name: string; readonly href: string }
  readonly pair: PairKey
  readonly name: string
  readonly state: string
  readonly because: string | null
  readonly asked: string
  readonly prerequisite: ExplainedNode | null
  readonly signed: readonly SignedView[]
  /** Levels that may be signed, the one that can be signed now first. */
  readonly levels: readonly { readonly key: string; readonly title: string }[]
  readonly canSignNow: boolean
  readonly maySign: boolean
  readonly mayOverride: boolean
  readonly arc: ArcSubject
  readonly lines: readonly AttemptLine[]
}

const linesShown = 12

/** A skill at a place for one diver: how it stands, what it wants, its attempts, and the signature. */
export async function loadPair(diver: string, encoded: string): Promise<PairPage> {
  const { actor, desk, evaluation, words } = await loadDiverNow(diver)
  const { curriculum, file, people, moments } = desk
  const pair = curriculum.pairs.get(decodeURIComponent(encoded) as PairKey)
  const history = pair && evaluation.history(pair.key)
  if (!pair || !history) notFound()
  const now = signable(evaluation, pair.key)
  const level = now
    ? curriculum.levelIndex(now.level)
    : Math.max(pair.level, evaluation.holdings.of(pair.key).by?.level ?? 0)
  const standard = standardOf(history, level)
  const { state, because } = openState(evaluation, pair.key)
  const atLevel = curriculum.levels[level]?.key ?? ''
  const node = { kind: 'signOff', ...pair.holding, atLevel } as const
  const prerequisite = findPrerequisite(evaluation, pair.key)
  const shown = history.attempts.slice(-linesShown)
  const head = canDecide(actor, file.club)
  return {
    diver: { id: file.id, name: `${file.givenName} ${file.familyName}`, href: `/desk/divers/${file.id}` },
    pair: pair.key,
    name: pairName(pair.key, words),
    state,
    because: because === null ? null : 'node' in because ? explain(because, words).sentence : sayBlock(because, words),
    asked: standard.holds
      ? `The standard at ${levelName(atLevel, words)} is reached.`
      : sayReason(
          { node, reason: { code: 'not enough', level: atLevel, shortage: standard.shortage, signedAt: null } },
          words,
        ),
    prerequisite: prerequisite ? explain(prerequisite, words) : null,
    signed: [...evaluation.holdings.of(pair.key).all].reverse().map((one) => {
      const by = file.record.signOffs.find((fact) => fact.id === one.id)
      const who = by ? (people.get(by.coach)?.name ?? 'a coach') : 'the head coach'
      const verb = one.kind === 'recognition' ? 'Recognised' : one.byOverride ? 'Signed by override' : 'Signed'
      const title = curriculum.levels[one.level]?.title ?? 'an earlier level'
      return {
        id: one.id,
        sentence: `${verb} at ${title} on ${dayName(one.day, words)} by ${who}: ${one.state}${one.state === 'current' ? `, valid to ${dayName(one.validUntil, words)}` : ''}.`,
        reason: desk.words.get(one.id) ?? null,
        revocable: head && one.kind === 'sign-off' && one.state !== 'revoked',
      }
    }),
    levels: curriculum.levels
      .slice(pair.level, level + 1)
      .reverse()
      .map(({ key, title }) => ({ key, title })),
    canSignNow: now !== null,
    maySign: canSign(actor, file.club, pair.at.signer),
    mayOverride:
      head && now === null && state !== 'held' && state !== 'closed' && standard.shortage.standing.length === 0,
    arc: arcSubject(curriculum, pair, shown.slice(-pair.standard.of), level),
    lines: toLines({ evaluation, words, people, moments }, pair, shown, level),
  }
}
