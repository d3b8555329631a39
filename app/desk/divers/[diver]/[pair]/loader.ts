import { notFound } from 'next/navigation'
import type { Act } from '@/app/desk/_components/panels'
import { type AttemptLine, toLines } from '@/app/desk/loader'
import { canDecide, canSign } from '@/lib/access/can'
import { type ArcSubject, arcSubject } from '@/lib/assessment/arc-subject'
import { doubtChain } from '@/lib/assessment/doubt-chain'
import type { SignedState } from '@/lib/assessment/holding-state'
import { openState, signable } from '@/lib/assessment/open'
import { raisedIn } from '@/lib/assessment/raise'
import { findPrerequisite } from '@/lib/assessment/readiness/evaluate'
import { type ExplainedNode, explain } from '@/lib/assessment/readiness/explain'
import { sayBlock } from '@/lib/assessment/readiness/say-block'
import { sayDoubtChain } from '@/lib/assessment/readiness/say-doubt'
import { sayEntry } from '@/lib/assessment/readiness/say-entry'
import { sayReason } from '@/lib/assessment/readiness/say-reason'
import { saySignatureEvent, saySigned, signedWord } from '@/lib/assessment/readiness/say-signature'
import { dayName, levelName, pairName } from '@/lib/assessment/readiness/wording'
import type { AttemptFact } from '@/lib/assessment/record'
import { signatureHistory } from '@/lib/assessment/signature-history'
import { standardOf } from '@/lib/assessment/standard'
import { type LookCoach, readGrants } from '@/lib/assessment/store/grants'
import { readSignatures, type Signatures } from '@/lib/assessment/store/signatures'
import { dayIn } from '@/lib/assessment/time'
import type { Pair, PairKey } from '@/lib/curriculum/edition/curriculum'
import { loadDiverNow } from '../loader'

/** Something signed or recognised: how it was given, what became of it, and what can be done about it. */
export interface SignedView {
  readonly id: string
  readonly state: string
  readonly sentence: string
  readonly reason: string | null
  /** Its doubts with their chains, and its history. */
  readonly history: readonly string[]
  readonly acts: readonly Act[]
}

/** An attempt that waits for the head coach, or a raise that does, and what became of those before it. */
export interface WaitingView {
  readonly id: string
  readonly day: string
  readonly sentence: string
  readonly reason: string | null
  readonly acts: readonly Act[]
}

export interface PairPage {
  readonly diver: { readonly id: string; readonly name: string; readonly href: string }
  readonly pair: PairKey
  /** Its guide, at the level that is asked of her. */
  readonly guide: string
  readonly name: string
  readonly state: string
  readonly because: string | null
  readonly asked: string
  readonly prerequisite: ExplainedNode | null
  readonly signed: readonly SignedView[]
  /** Attempts at a closed skill and raised critical ratings, released and accepted or not. */
  readonly waiting: readonly WaitingView[]
  /** Looks from other clubs; null for whoever does not grant them, and while there is nothing to grant. */
  readonly looks: {
    readonly attempts: readonly { readonly id: string; readonly day: string }[]
    readonly coaches: readonly LookCoach[]
    readonly granted: readonly {
      readonly attempt: string
      readonly coach: string
      readonly day: string
      readonly name: string
    }[]
  } | null
  /** Levels that may be signed, the one that can be signed now first. */
  readonly levels: readonly { readonly key: string; readonly title: string }[]
  readonly canSignNow: boolean
  readonly maySign: boolean
  readonly mayOverride: boolean
  readonly arc: ArcSubject
  readonly lines: readonly AttemptLine[]
}

const linesShown = 12

type OnPage = Awaited<ReturnType<typeof loadDiverNow>> & { readonly head: boolean; readonly after: Signatures }

function toSigned(one: SignedState, { desk, evaluation, words, head, after }: OnPage): SignedView {
  const { file, people } = desk
  const signOff = file.record.signOffs.find((fact) => fact.id === one.id)
  const recognition = file.record.recognitions.find((fact) => fact.id === one.id)
  const name = (account: string | undefined) => people.get(account ?? '')?.name ?? 'a coach'
  const by = { name: name(signOff?.coach ?? recognition?.by), recheck: signOff?.by === 'recheck' }
  const revoked = after.revoked.get(one.id)
  const back = revoked && `Taken back on ${dayName(dayIn(revoked.at, file.zone), words)} by ${name(revoked.by)}`
  return {
    id: one.id,
    state: signedWord(one),
    sentence: saySigned(one, by, words),
    reason: desk.words.get(one.id) ?? after.recognised.get(one.id) ?? null,
    history: [
      ...signatureHistory(evaluation, one, file.zone).map((event) => saySignatureEvent(event, words)),
      ...one.doubts.map((doubt) => sayDoubtChain(doubtChain(evaluation, one.pair, doubt), words)),
      ...(back ? [revoked.reason ? `${back}: “${revoked.reason}”` : `${back}.`] : []),
    ],
    acts: head && one.state !== 'revoked' ? [{ act: 'revoke', kind: one.kind, subject: one.id }] : [],
  }
}

/** The attempts at a closed skill and the raised ratings of a pair, newest first. */
function listWaiting(pair: Pair, attempts: readonly AttemptFact[], { words, head, after }: OnPage): WaitingView[] {
  const flagged = attempts
    .filter(({ closedThen }) => closedThen)
    .map((attempt): WaitingView => {
      const released = after.released.get(`attempt ${attempt.id}`)
      const sentence = released
        ? 'Dived while the skill was closed, and released.'
        : sayEntry({ list: 'flagged', attempt, why: 'closed' }, words)
      const acts: Act[] = head && !released ? [{ act: 'release', attempt: attempt.id }] : []
      return { id: attempt.id, day: dayName(attempt.day, words), sentence, reason: released?.reason ?? null, acts }
    })
  const raised = attempts.flatMap((attempt) =>
    raisedIn(pair, attempt).map(({ view, raises }): WaitingView => {
      const sentence = sayEntry({ list: 'raised', attempt, view, raises }, words)
      const acts: Act[] = head ? [{ act: 'accept', observation: view.id }] : []
      return { id: view.id, day: dayName(attempt.day, words), sentence, reason: null, acts }
    }),
  )
  return [...raised, ...flagged.reverse()]
}

async function loadLooks(attempts: readonly AttemptFact[], { scope, desk, words }: OnPage): Promise<PairPage['looks']> {
  const { coaches, grants } = await readGrants(scope, desk.file.id)
  const dayOf = (id: string) => attempts.filter((one) => one.id === id).map(({ day }) => dayName(day, words))
  const granted = grants.flatMap(({ attempt, coach }) => {
    const name = desk.people.get(coach)?.name ?? 'a coach'
    return dayOf(attempt).map((day) => ({ attempt, coach, day, name }))
  })
  const filmed = attempts.filter(({ observations }) => observations.some(({ moments }) => moments > 0))
  const shown = filmed.slice(-linesShown).map(({ id, day }) => ({ id, day: dayName(day, words) }))
  if (granted.length === 0 && (coaches.length === 0 || shown.length === 0)) return null
  return { attempts: shown.reverse(), coaches, granted }
}

/** A skill at a place for one diver: how it stands, what it wants, its attempts, and the signature. */
export async function loadPair(diver: string, encoded: string): Promise<PairPage> {
  const now = await loadDiverNow(diver)
  const { actor, desk, evaluation, words } = now
  const { curriculum, file, people, moments } = desk
  const pair = curriculum.pairs.get(decodeURIComponent(encoded) as PairKey)
  const history = pair && evaluation.history(pair.key)
  if (!pair || !history) notFound()
  const found = signable(evaluation, pair.key)
  const level = found
    ? curriculum.levelIndex(found.level)
    : Math.max(pair.level, evaluation.holdings.of(pair.key).by?.level ?? 0)
  const standard = standardOf(history, level)
  const { state, because } = openState(evaluation, pair.key)
  const atLevel = curriculum.levels[level]?.key ?? ''
  const node = { kind: 'signOff', ...pair.holding, atLevel } as const
  const prerequisite = findPrerequisite(evaluation, pair.key)
  const shown = history.attempts.slice(-linesShown)
  const head = canDecide(actor, file.club)
  const attempts = history.attempts.map(({ fact }) => fact)
  const on: OnPage = { ...now, head, after: await readSignatures(now.scope, file.id) }
  return {
    diver: { id: file.id, name: `${file.givenName} ${file.familyName}`, href: `/desk/divers/${file.id}` },
    pair: pair.key,
    guide: `/curriculum/${encodeURIComponent(pair.key)}?level=${encodeURIComponent(atLevel)}`,
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
    signed: [...evaluation.holdings.of(pair.key).all].reverse().map((one) => toSigned(one, on)),
    waiting: listWaiting(pair, attempts, on),
    looks: head ? await loadLooks(attempts, on) : null,
    levels: curriculum.levels
      .slice(pair.level, level + 1)
      .reverse()
      .map(({ key, title }) => ({ key, title })),
    canSignNow: found !== null,
    maySign: canSign(actor, file.club, pair.at.signer),
    mayOverride:
      head && found === null && state !== 'held' && state !== 'closed' && standard.shortage.standing.length === 0,
    arc: arcSubject(curriculum, pair, shown.slice(-pair.standard.of), level),
    lines: toLines({ evaluation, words, people, moments }, pair, shown, level),
  }
}
