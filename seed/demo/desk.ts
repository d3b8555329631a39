import { coachesUnder } from '../../lib/assessment/decide'
import { isCurrentAt } from '../../lib/assessment/holding-state'
import { openState, signable } from '../../lib/assessment/open'
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
import { type CoachData, coaches } from './coast'
import { coachScope, getStanding, require, type Standing } from './hands'

const minute = 60_000

/**
 * Something that people of the demo do, act by act: each act's time is told before it is done, so that what several do at the
 * same time can be done in the order of the clock (clock.ts).
 */
export type Acts = AsyncGenerator<number, void, void>

/** Signs what is to sign and hers to sign, from `from` on; what one sign-off opens is seen at the next look. */
export async function* signWhatIsReached(
  coach: CoachData,
  role: 'assistant' | 'head',
  divers: readonly DiverInSeason[],
  standing: Standing,
  from: number,
): Acts {
  let at = from
  for (const diver of divers) {
    const evaluation = getStanding(standing, diver)
    for (const key of divedLately(evaluation)) {
      const signer = evaluation.curriculum.pairs.get(key)?.at.signer
      if (diver.story.unsigned?.includes(key) || (signer === 'head' && role !== 'head')) continue
      const now = signable(evaluation, key)
      if (!now) continue
      at += minute
      yield at
      await sign(coach, diver, at, { pair: key, level: now.level, waiver: null, reason: null })
    }
    for (const request of role === 'head' ? overridesOf(coach, diver, evaluation) : []) {
      at += minute
      yield at
      await sign(coach, diver, at, request)
    }
  }
}

/** Only what was dived can have reached anything new; in the curriculum's order. */
function divedLately({ curriculum, record, date }: Evaluation): PairKey[] {
  const lately = new Set(record.attempts.filter(({ day }) => day > date.day - 21).map(({ pair }) => pair))
  return [...curriculum.pairs.keys()].filter((key) => lately.has(key))
}

async function sign(coach: CoachData, diver: DiverInSeason, at: number, request: SignRequest): Promise<void> {
  const outcome = await signSkill(await coachScope(coach.key, at), { diver: diver.id, ...request }, 'when read')
  require(`${coach.name} signs ${request.pair} for ${diver.story.given}`, outcome)
}

/** What is waived where one coach is all there is, in the words that stand beside each such sign-off. */
const alone = 'One coach here: nobody else was on the deck. Filmed where the board allows it; anyone may look.'

/** Whether a club has no other coach than its head. */
const isAlone = ({ key, posts }: CoachData): boolean =>
  posts.some(({ club }) =>
    coaches.every((other) => other.key === key || !other.posts.some((post) => post.club === club)),
  )

/** What the head coach signs where the standard lacks nothing but a second coach, and there is a reason to sign all the same. */
function overridesOf(coach: CoachData, { story }: DiverInSeason, evaluation: Evaluation): SignRequest[] {
  const told = (story.waivers ?? []).filter(({ from }) => parseDay(from) <= evaluation.date.day)
  const reasons = isAlone(coach) ? divedLately(evaluation).map((pair) => ({ pair, reason: alone })) : told
  return reasons.flatMap(({ pair: key, reason }): SignRequest[] => {
    const history = evaluation.history(key)
    if (!history) return []
    const { level, at } = history.pair
    if (isCurrentAt(evaluation.holdings.of(key), level) || openState(evaluation, key).state !== 'open') return []
    const waiver = { coaches: true } as const
    return standardOf(history, level, waiver).holds ? [{ pair: key, level: at.level, waiver, reason }] : []
  })
}

/** Goes through the queue: approves what is ready, returns what the story returns, leaves what waits. */
export async function* decideOnQueue(
  coach: CoachData,
  divers: readonly DiverInSeason[],
  standing: Standing,
  from: number,
): Acts {
  let at = from
  for (const diver of divers) {
    const evaluation = getStanding(standing, diver)
    for (const target of listTargets(evaluation.curriculum)) {
      const found = readTarget(evaluation, target)
      if (!found.ready || diver.story.waits?.includes(target)) continue
      at += 4 * minute
      yield at
      const alone = coachesUnder(evaluation, found).every((one) => one === coast.account(coach.key))
      const answer = answerTo(diver, target, evaluation.date.day)
      const request = { diver: diver.id, target, ...answer, onlyCoach: alone ? onlyCoach : null }
      const outcome = await decideTarget(await coachScope(coach.key, at), request, 'when read')
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
