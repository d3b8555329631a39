import { coachesUnder } from '../../lib/assessment/decide'
import { isCurrentAt } from '../../lib/assessment/holding-state'
import { signable } from '../../lib/assessment/open'
import type { Evaluation } from '../../lib/assessment/readiness/evaluation'
import { listTargets, readTarget } from '../../lib/assessment/readiness/targets'
import type { TargetKey } from '../../lib/assessment/record'
import type { SignRequest } from '../../lib/assessment/sign'
import { standardOf } from '../../lib/assessment/standard'
import { decideTarget } from '../../lib/assessment/store/decide'
import { signSkill } from '../../lib/assessment/store/sign'
import { parseDay } from '../../lib/assessment/time'
import type { PairKey } from '../../lib/curriculum/edition/curriculum'
import { coast } from './bootstrap'
import type { DiverInSeason } from './choose'
import type { CoachData } from './coast'
import { coachScope, getStanding, require, type Standing } from './hands'

const minute = 60_000

/** Signs what is to sign and hers to sign, from `from` on; what one sign-off opens is seen at the next look. */
export async function signWhatIsReached(
  coach: CoachData,
  role: 'assistant' | 'head',
  divers: readonly DiverInSeason[],
  standing: Standing,
  from: number,
): Promise<void> {
  let at = from
  for (const diver of divers) {
    const evaluation = getStanding(standing, diver)
    for (const key of divedLately(evaluation)) {
      const signer = evaluation.curriculum.pairs.get(key)?.at.signer
      if (diver.story.unsigned?.includes(key) || (signer === 'head' && role !== 'head')) continue
      const now = signable(evaluation, key)
      if (!now) continue
      at += minute
      await sign(coach, diver, at, { pair: key, level: now.level, waiver: null, reason: null })
    }
    if (role === 'head') at = await signByOverride(coach, diver, evaluation, at)
  }
}

/** Only what was dived can have reached anything new; in the curriculum's order. */
function divedLately({ curriculum, record, date }: Evaluation): PairKey[] {
  const lately = new Set(record.attempts.filter(({ day }) => day > date.day - 21).map(({ pair }) => pair))
  return [...curriculum.pairs.keys()].filter((key) => lately.has(key))
}

async function sign(coach: CoachData, diver: DiverInSeason, at: number, request: SignRequest): Promise<void> {
  const outcome = await signSkill(await coachScope(coach.key, at), { diver: diver.id, ...request })
  require(`${coach.name} signs ${request.pair} for ${diver.story.given}`, outcome)
}

/** Where a story says so, and the standard lacks nothing but a second coach. */
async function signByOverride(
  coach: CoachData,
  diver: DiverInSeason,
  evaluation: Evaluation,
  from: number,
): Promise<number> {
  let at = from
  for (const { pair: key, from: day, reason } of diver.story.waivers ?? []) {
    const history = evaluation.history(key)
    if (!history || evaluation.date.day < parseDay(day)) continue
    const level = history.pair.level
    if (isCurrentAt(evaluation.holdings.of(key), level) || signable(evaluation, key)) continue
    const waiver = { coaches: true } as const
    if (!standardOf(history, level, waiver).holds) continue
    at += minute
    await sign(coach, diver, at, { pair: key, level: history.pair.at.level, waiver, reason })
  }
  return at
}

/** Goes through the queue: approves what is ready, returns what the story returns, leaves what waits. */
export async function decideOnQueue(
  coach: CoachData,
  divers: readonly DiverInSeason[],
  standing: Standing,
  from: number,
): Promise<void> {
  let at = from
  for (const diver of divers) {
    const evaluation = getStanding(standing, diver)
    for (const target of listTargets(evaluation.curriculum)) {
      const found = readTarget(evaluation, target)
      if (!found.ready || diver.story.waits?.includes(target)) continue
      at += 4 * minute
      const alone = coachesUnder(evaluation, found).every((one) => one === coast.account(coach.key))
      const answer = answerTo(diver, target, evaluation.date.day)
      const request = { diver: diver.id, target, ...answer, onlyCoach: alone ? onlyCoach : null }
      const outcome = await decideTarget(await coachScope(coach.key, at), request)
      require(`${coach.name} decides on ${target} for ${diver.story.given}`, outcome)
    }
  }
}

const onlyCoach = 'I was the only coach at these sessions; the film of them is linked.'

function answerTo({ story }: DiverInSeason, target: TargetKey, day: number) {
  const told = story.answers?.find((answer) => answer.target === target && parseDay(answer.from) <= day)
  const wish = target.startsWith('move:') ? ('yes' as const) : null
  return told
    ? { outcome: told.outcome, reason: told.reason, wantsMoreOf: told.wantsMoreOf, diverWants: wish }
    : { outcome: 'approve' as const, reason: null, wantsMoreOf: [], diverWants: wish }
}
