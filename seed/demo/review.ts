import { momentsUnder } from '../../lib/assessment/evidence'
import type { CheckKind } from '../../lib/assessment/moment-check'
import { evaluationOf } from '../../lib/assessment/readiness/evaluation'
import { readTarget } from '../../lib/assessment/readiness/targets'
import { checkMoment } from '../../lib/assessment/store/check-moment'
import { readDiver } from '../../lib/assessment/store/reads'
import { asOfInstant, type EpochDay, parseDay } from '../../lib/assessment/time'
import type { PairKey } from '../../lib/curriculum/edition/curriculum'
import { chanceOf } from './chance'
import type { DiverInSeason } from './choose'
import { coachScope, require } from './hands'
import { headOf } from './mishaps'
import { instantOn } from './season'

const minute = 60_000

/** The moments of the step, in the order in which the page shows them. */
async function listMoments(diver: DiverInSeason, at: number) {
  const { story, id } = diver
  const desk = await readDiver(await coachScope(headOf(diver), at), id)
  if (!desk || !story.reviewed) throw new Error(`${story.given} has no films to go through`)
  const evaluation = evaluationOf(desk.curriculum, desk.file.record, asOfInstant(at, desk.file.zone))
  const moments = momentsUnder(evaluation, readTarget(evaluation, story.reviewed.target), desk.moments)
  return moments.map(({ pair, moment }) => ({ id: moment.id, pair: pair.key }))
}

/** She goes through them in one evening: accepts, asks about one, and finds some that do not open. */
async function reviewFilms(diver: DiverInSeason, day: EpochDay): Promise<void> {
  const { reviewed, given, key } = diver.story
  if (!reviewed || parseDay(reviewed.on) !== day) return
  let at = instantOn(day, 20)
  const moments = await listMoments(diver, at)
  const asked = moments.findLast(({ pair }) => pair === reviewed.asks.pair)?.id
  if (!asked) throw new Error(`no film of ${reviewed.asks.pair} is under ${given}’s step`)
  const kindOf = (id: string, pair: PairKey): CheckKind =>
    id === asked ? 'questioned' : pair === reviewed.away ? 'not reachable' : 'accepted'
  for (const { id: moment, pair } of moments) {
    at += 2 * minute
    const kind = kindOf(moment, pair)
    const check = { moment, kind, words: kind === 'questioned' ? reviewed.asks.words : '' }
    const id = chanceOf('review', key, moment).id(at)
    require(`${kind}: a film of ${given}`, await checkMoment(await coachScope(headOf(diver), at), { ...check, id }))
  }
}

/** In the evening: whose films the head coach goes through. */
export async function reviewFilmsOn(day: EpochDay, divers: readonly DiverInSeason[]): Promise<void> {
  for (const diver of divers) await reviewFilms(diver, day)
}
