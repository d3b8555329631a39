import { describe, expect, it } from 'vitest'
import { armAngle, bodyTilt, hipAngle, type Reading } from '@/lib/assessment/measure/angles'
import { distanceFromTip } from '@/lib/assessment/measure/distance'
import { levelDrop, measureFlight } from '@/lib/assessment/measure/flight'
import { type Measured, seenAt } from '@/lib/assessment/measure/measured'
import { scaleOf, uprightOf } from '@/lib/assessment/measure/picture'
import { suggest } from '@/lib/assessment/measure/suggest'
import { readCurriculumFolder } from '../read-curriculum'
import { tell } from './dive'
import { type Clip, clips } from './dives'
import { cameraFor, cord, staff } from './draw'
import { type Joint, seen } from './figure'

const { document } = readCurriculumFolder('seed/curriculum')
if (document === null) throw new Error('the demo curriculum cannot be read')

const pixel = 1.5
/** Seconds from the board's lowest point to the last contact: 0.3 of a press of 0.7 s. */
const rising = 0.21

/** What a coach measures on a film who places each point where it is, by criterion. */
function measuredOn({ simulated, cameraTilt, rate }: Clip): Readonly<Record<string, Measured>> {
  const told = tell(simulated)
  const camera = cameraFor(simulated.height, cameraTilt)
  const point = (time: number, joint: Joint) => seen(told.figureAt(time)[joint], camera)
  const [bottom, top] = cord(simulated.height)
  const plumb = { kind: 'plumb', bottom: seen(bottom, camera), top: seen(top, camera) } as const
  const reading: Reading = { up: uprightOf(plumb, pixel), pixel }
  const scale = scaleOf({ from: seen(staff[0], camera), to: seen(staff[1], camera), metres: 1 }, pixel)
  const low = told.takeOff - rising
  const top2 = told.takeOff + simulated.speed / 9.81
  const steps = Array.from({ length: 400 }, (_, step) => top2 + (step / 400) * (told.entry - top2))
  const passing = steps.find((time) => told.figureAt(time).head.y <= simulated.height) ?? told.entry
  const hip = hipAngle(point(top2, 'shoulder'), point(top2, 'hip'), point(top2, 'ankle'), pixel)
  const arms = armAngle(point(low, 'shoulder'), point(low, 'hand'), reading)
  const times = { takeOff: seenAt(told.takeOff, 1 / rate), entry: seenAt(told.entry, 1 / rate) }
  return {
    'arms-at-twelve': arms,
    'arms-with-board': arms,
    'closed-pike': hip,
    'straight-and-braced': hip,
    'line-at-water': bodyTilt(
      (['ankle', 'hip', 'shoulder', 'head'] as const).map((joint) => point(told.entry, joint)),
      reading,
    ),
    'clear-of-board': distanceFromTip(
      seen({ x: 0, y: simulated.height }, camera),
      point(passing, 'head'),
      1,
      reading,
      scale,
    ),
    'press-through': measureFlight({ ...times, drop: levelDrop(simulated.height) }).rise,
  }
}

function suggestedOn(name: string, key: string) {
  const clip = clips.find((one) => one.name === name)
  const criterion = document?.criteria.find((one) => one.key === key)
  const measured = clip && measuredOn(clip)[key]
  if (!criterion?.measure || !measured) throw new Error(`${key} is not measured on ${name}`)
  const { critical, measure } = criterion
  return suggest(measured, { critical, measure }, clip.simulated.height === 1 ? '1m' : '3m')
}

describe('the bands of the demo on its films', () => {
  it.each(clips.filter(({ sound }) => sound).map(({ name }) => name))('%s is sound in all that is measured', (name) => {
    const arms = name.startsWith('1') ? 'arms-at-twelve' : 'arms-with-board'
    const shape = name.startsWith('2') ? 'straight-and-braced' : 'closed-pike'
    for (const key of [arms, shape, 'line-at-water', 'clear-of-board', 'press-through']) {
      const found = suggestedOn(name, key)
      expect(found.kind === 'suggested' && found.rating, key).toBeGreaterThanOrEqual(3)
    }
  })

  it.each([
    ['101b-arms-short', 'arms-at-twelve', 2],
    ['101b-arms-short', 'line-at-water', 3],
    ['101b-3m-open-pike', 'closed-pike', 2],
    ['101b-3m-open-pike', 'line-at-water', 2],
    ['401b-open-pike', 'closed-pike', 2],
    ['401b-leaning', 'clear-of-board', 2],
    ['401b-3m-arms-short', 'arms-with-board', 1],
    ['401b-3m-arms-short', 'line-at-water', 2],
    ['201a-arched', 'straight-and-braced', 1],
    ['201a-arched', 'line-at-water', 3],
    ['201a-1m-short', 'line-at-water', 2],
  ])('%s: a fault of %s suggests %d', (name, key, rating) => {
    expect(suggestedOn(name, key)).toMatchObject({ kind: 'suggested', rating })
  })
})
