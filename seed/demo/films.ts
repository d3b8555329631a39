import type { MarkKey } from '../../lib/assessment/mark/mark'
import type { Point } from '../../lib/assessment/measure/picture'
import type { OnFrames } from '../../lib/assessment/measure/taken'
import { ownFilm } from '../../lib/assessment/moment'
import { keepMark } from '../../lib/assessment/store/marks'
import { keepMeasure } from '../../lib/assessment/store/measures'
import { trueDive } from '../clips/true-dive'
import { type Chance, chanceOf } from './chance'
import { type CoachData, coaches } from './coast'
import { coachScope, require } from './hands'
import type { Remembered } from './turn'

/** A dive whose film was drawn, so that what it shows is known. */
interface Filmed {
  readonly moment: string
  /** Of the film. */
  readonly name: string
  readonly dive: ReturnType<typeof trueDive>
  readonly seen: Remembered
}

/** All such dives, newest first. */
const listFilmed = (dives: readonly Remembered[]): Filmed[] =>
  dives
    .filter(({ diver }) => !diver.story.consentsMissing)
    .flatMap((seen) =>
      seen.observation.moments
        .filter(({ link }) => ownFilm.test(link))
        .map(({ id, link }) => {
          const name = link.slice(link.lastIndexOf('/') + 1, -'.webm'.length)
          return { moment: id, name, dive: trueDive(name), seen }
        }),
    )
    .reverse()

/** The last of each diver. */
const lastOfEach = (all: readonly Filmed[]): Filmed[] =>
  all.filter((one, at) => all.findIndex(({ seen }) => seen.diver.id === one.seen.diver.id) === at)

const monthsBack = 90 * 86_400_000

/** The same diver's same dive in the same club, done otherwise and months before: to be laid beside it. */
const isThen = ({ seen: now, name }: Filmed, { seen: then, name: other }: Filmed): boolean =>
  now.diver.id === then.diver.id &&
  now.pair.key === then.pair.key &&
  now.deck.club === then.deck.club &&
  now.observation.observedAt - then.observation.observedAt > monthsBack &&
  name !== other

const frameUsOf = ({ dive: { rate } }: Filmed): number => Math.round(1_000_000 / rate)
const msOf = ({ dive: { rate } }: Filmed, frame: number): number => Math.round((frame * 1000) / rate)

/** Where a coach sees each phase begin: the true frame, or one beside it. */
function marksIn(filmed: Filmed, off: number): [MarkKey, number][] {
  const { dive, seen } = filmed
  const running = seen.pair.skill.phaseSet === 'running'
  const marks: [MarkKey, number][] = [
    [running ? 'press' : 'stance', dive.press],
    ['take-off', dive.lowest],
    ['flight', dive.leaves],
    ['highest point', dive.highest + off],
    ['come-out', dive.opens + off],
    ['entry', dive.meets + Math.sign(off)],
  ]
  return marks.map(([key, frame]) => [key, msOf(filmed, frame)])
}

/** The body's line in a frame, by points as a coach places them: within a pixel or two of where they truly are. */
function tiltIn(filmed: Filmed, shown: number, chance: Chance): OnFrames {
  const { dive } = filmed
  const near = ({ x, y }: Point): Point => ({ x: x + chance.normal(1.2), y: y + chance.normal(1.2) })
  const { ankle, hip, shoulder, head } = dive.points(shown)
  const body = { ankle: near(ankle), hip: near(hip), shoulder: near(shoulder), head: near(head) }
  const plumb = { 'plumb top': near(dive.still['plumb top']), 'plumb bottom': near(dive.still['plumb bottom']) }
  const frame = { atMs: msOf(filmed, shown), frameUs: frameUsOf(filmed), ...dive.size }
  return {
    kind: 'tilt',
    frames: [frame],
    points: { ...body, ...plumb },
    upright: 'plumb',
    down: false,
    metres: null,
    pixel: 2,
  }
}

/** One coach goes through one film: marks it, and measures where it is worth it. */
async function goThrough(
  filmed: Filmed,
  coach: CoachData,
  from: number,
  off: number,
  measures: boolean,
): Promise<void> {
  const { moment, seen } = filmed
  const said = `${coach.name} on the film of ${seen.diver.story.given}`
  const chance = chanceOf('points', moment, coach.key)
  let at = from
  for (const [key, atMs] of marksIn(filmed, off)) {
    at += 9_000
    require(said, await keepMark(
      await coachScope(coach.key, at),
      { moment, key, atMs, frameUs: frameUsOf(filmed) },
      chance.id(at),
    ))
  }
  if (!measures) return
  const { leaves, meets, board } = filmed.dive
  const flight = { kind: 'flight', drop: { value: board, sd: 0.1 } } as const
  for (const taken of [tiltIn(filmed, leaves, chance), flight, tiltIn(filmed, meets, chance)]) {
    at += 60_000
    require(said, await keepMeasure(await coachScope(coach.key, at), { moment, taken }, chance.id(at)))
  }
}

const lately = 28 * 86_400_000

/**
 * On the last evening coaches mark and measure a few films of the last weeks: one of them two coaches, and not the same; and
 * that diver's same dive of months ago, to lay beside it. `season`: all dives, oldest first.
 * Throws Error at the first thing that is refused.
 */
export async function markFilms(season: readonly Remembered[], evening: number): Promise<void> {
  const all = listFilmed(season)
  const recent = all.filter(({ seen }) => seen.observation.observedAt > evening - lately)
  const secondOf = ({ seen: { deck } }: Filmed): CoachData | undefined =>
    coaches.find(
      (coach) => !coach.left && coach.key !== deck.coach.key && coach.posts.some(({ club }) => club === deck.club.key),
    )
  const thenOf = (one: Filmed): Filmed | undefined => all.find((other) => isThen(one, other))
  const shared = recent.find((one) => secondOf(one) && thenOf(one)) ?? recent.find(secondOf)
  const others = lastOfEach(recent).filter(({ seen }) => seen.diver !== shared?.seen.diver)
  for (const one of [...(shared ? [shared] : []), ...others].slice(0, 3))
    await goThrough(one, one.seen.deck.coach, evening, 0, true)
  const second = shared && secondOf(shared)
  if (shared && second) await goThrough(shared, second, evening + 600_000, 2, false)
  const then = shared && thenOf(shared)
  if (then) await goThrough(then, shared.seen.deck.coach, evening + 1_200_000, 0, true)
}
