import { agreeToTransfer, listTransfers, proposeTransfer } from '../../lib/access/store/transfers'
import type { Recognisable } from '../../lib/assessment/recognise'
import { recogniseAll } from '../../lib/assessment/store/recognise'
import { standDown } from '../../lib/assessment/store/stand-down'
import { type EpochDay, parseDay } from '../../lib/assessment/time'
import type { Curriculum } from '../../lib/curriculum/edition/curriculum'
import { readEditionInForce } from '../../lib/curriculum/store/editions'
import { coast } from './bootstrap'
import { type DiverInSeason, tasteOf } from './choose'
import { type ClubData, clubs, type SquadKey, squads } from './coast'
import { coachScope, require } from './hands'
import { routeTo } from './route'
import { instantOn } from './season'
import { firstDayOf } from './stories/story'

/** What the head coaches write at their desks beside the queue: what divers bring with them, moves between clubs, stand-downs. */

const clubOf = (squad: SquadKey): ClubData => {
  const home = squads.find((one) => one.key === squad)?.club
  const club = clubs.find((one) => one.key === home)
  if (!club) throw new Error(`the demo has no club for the ${squad} squad`)
  return club
}

const isOn = (day: EpochDay, written: string | undefined): boolean => written !== undefined && parseDay(written) === day

/** A level with all that it asks: the skills on this diver's way there, the levels, the board moves. */
function broughtBy({ story }: DiverInSeason, curriculum: Curriculum): Recognisable[] {
  const { recognised } = story
  if (!recognised) return []
  const upTo = curriculum.levelIndex(recognised)
  const route = routeTo(curriculum, recognised, tasteOf(story), story.leavesOut)
  const highest = new Map(route.steps.map(({ pair, level }) => [pair.key, level]))
  return [
    ...[...highest].map(
      ([pair, level]): Recognisable => ({ kind: 'holding', pair, level: curriculum.levels[level]?.key ?? '' }),
    ),
    ...route.moves.map(({ family, to }): Recognisable => ({ kind: 'boardMove', family, to })),
    ...curriculum.levels.slice(0, upTo + 1).map(({ key }): Recognisable => ({ kind: 'level', level: key })),
  ]
}

/** On their first day head coaches recognise, club by club, what divers bring with them. */
export async function recogniseOn(day: EpochDay, divers: readonly DiverInSeason[]): Promise<void> {
  for (const club of clubs) {
    const fresh = divers.filter(
      ({ story }) => story.recognised && firstDayOf(story) === day && clubOf(story.squad).key === club.key,
    )
    if (fresh.length === 0) continue
    const scope = await coachScope(club.head, instantOn(day, 8))
    const curriculum = await readEditionInForce(scope)
    const ticks = fresh.flatMap((diver) => broughtBy(diver, curriculum).map((what) => ({ diver: diver.id, what })))
    const done = await recogniseAll(
      scope,
      {
        ticks,
        reason: 'Held before the programme kept a record; to be shown again.',
      },
      'when read',
    )
    if (!done.ok) throw new Error(`${club.name} recognises: ${done.refusals[0]?.message}`)
  }
}

/** A diver moves: the old club's head coach proposes in the morning, the new club's agrees. */
async function moveOn({ story, id }: DiverInSeason, day: EpochDay): Promise<void> {
  if (!story.moves || !isOn(day, story.moves.on)) return
  const from = clubOf(story.squad)
  const to = clubOf(story.moves.to)
  const old = await coachScope(from.head, instantOn(day, 8))
  const proposal = {
    fromClub: coast.club(from.key),
    toClub: coast.club(to.key),
    proposedFor: coast.club(from.key),
    diver: id,
    name: `${story.given} ${story.family}`,
    bornOn: new Date(`${story.born}T00:00:00Z`),
  }
  if (!(await proposeTransfer(old, proposal))) throw new Error(`${story.given}’s move is proposed already`)
  const fresh = await coachScope(to.head, instantOn(day, 8, 30))
  const open = (await listTransfers(fresh)).find((transfer) => transfer.diver === id && transfer.agreedAt === null)
  const agreed = open && (await agreeToTransfer(fresh, open.id, null))
  if (agreed !== 'agreed') throw new Error(`${story.given}’s move is not agreed to: ${agreed}`)
}

/** Before the day's first session: who moves today. */
export async function settleMoves(day: EpochDay, divers: readonly DiverInSeason[]): Promise<void> {
  for (const diver of divers) await moveOn(diver, day)
}

/** In the evening: whom the head coach keeps from something. */
export async function standDownOn(day: EpochDay, divers: readonly DiverInSeason[]): Promise<void> {
  for (const { story, id } of divers) {
    if (!story.keptFrom || !isOn(day, story.keptFrom.on)) continue
    const { closes, until, reason } = story.keptFrom
    const scope = await coachScope(clubOf(story.squad).head, instantOn(day, 19))
    const kept = { diver: id, closes, from: day, until: until === null ? null : parseDay(until), reason }
    require(`${story.given} is stood down`, await standDown(scope, kept))
  }
}
