import type { Key, SimulatedDive } from './dive'

const key = (at: number, trunk: number, hip: number, knee: number, arm: number): Key => ({
  at,
  trunk,
  hip,
  knee,
  arm,
  foot: 0,
})

/** On the board: the sole lies flat, but for so many degrees that the heel is lifted. */
const stood = (at: number, trunk: number, hip: number, knee: number, arm: number, heel: number): Key => ({
  ...key(at, trunk, hip, knee, arm),
  foot: 90 + trunk - hip + knee - heel,
})

/** What goes wrong in a clip; nothing, when it is left out. Degrees. */
export interface Faults {
  /** Arms this far short of overhead as the board bottoms: 30 is an hour of the clock face. */
  readonly armsShort?: number
  /** The line at take-off leans this much further out than it should. */
  readonly lean?: number
  /** The pike stays open by so much. */
  readonly openPike?: number
  /** Hips pushed through in flight. */
  readonly arch?: number
  /** The line at the entry is short of upright by so much; negative has gone past it. */
  readonly short?: number
}

/** Arms swing up past the front; the board bottoms at 0.7 of the press, where they belong overhead. */
const pressed = (trunk: number, { armsShort = 0, lean = 0 }: Faults): Key[] => [
  stood(0, 0, 0, 0, 175, 8),
  stood(0.35, 6, 22, 34, 160, 8),
  stood(0.7, 4, 24, 40, 4 + armsShort, 14),
  stood(0.9, trunk + lean, 6, 8, armsShort / 2, 45),
  key(1, trunk + lean, 0, 0, 0),
]

/**
 * Half a somersault forwards in pike: rise, fold, open, line up. For dives that face out and those that face the board. The fold
 * is shut `peak` of the way through the flight, at its highest point.
 */
const pikeFlight = (trunk: number, peak: number, { lean = 0, openPike = 0, short = 0 }: Faults): Key[] => [
  key(0, trunk + lean, 0, 0, 0),
  key(0.35 * peak, trunk + lean + 22, 34, 0, 20),
  key(peak, 124, 132 - openPike, 0, 62 - openPike / 3),
  key(peak + 0.14, 138, 128 - openPike, 0, 62 - openPike / 3),
  key(0.82, 168 - short, 26, 0, 14),
  key(0.97, 180 - short, 0, 0, 0),
  key(1, 180 - short, 0, 0, 0),
]

/** Half a somersault backwards, straight. */
const straightBack = ({ arch = 0, short = 0 }: Faults): Key[] => [
  key(0, -5, 0, 0, 0),
  key(0.3, -48, -6 - arch, 0, 20),
  key(0.55, -100, -8 - arch, 0, 60),
  key(0.85, -166 + short, -4, 0, 10),
  key(0.97, -180 + short, 0, 0, 0),
  key(1, -180 + short, 0, 0, 0),
]

type Height = 1 | 3

const forwardPike = (height: Height, faults: Faults): SimulatedDive => ({
  height,
  facing: 1,
  speed: height === 1 ? 4.1 : 4.5,
  away: 0.9,
  press: pressed(7, faults),
  flight: pikeFlight(7, height === 1 ? 0.4 : 0.335, faults),
})
const inwardPike = (height: Height, faults: Faults): SimulatedDive => ({
  height,
  facing: -1,
  speed: height === 1 ? 3.9 : 4.3,
  away: 1.15,
  press: pressed(4, faults),
  flight: pikeFlight(4, height === 1 ? 0.39 : 0.325, faults),
})
const backStraight = (height: Height, faults: Faults): SimulatedDive => ({
  height,
  facing: -1,
  speed: height === 1 ? 4.3 : 4.6,
  away: 0.85,
  press: pressed(-5, faults),
  flight: straightBack(faults),
})

/** A film of one simulated dive: its file's name, the dive, and what a coach should see. */
export interface Clip {
  readonly name: string
  readonly dive: '101B' | '401B' | '201A'
  readonly sound: boolean
  readonly shows: string
  readonly simulated: SimulatedDive
  /** Degrees that the camera was held askew. */
  readonly cameraTilt: number
  /** Pictures a second. */
  readonly rate: 60 | 30
}

const clip = (
  name: string,
  simulated: SimulatedDive,
  shows: string,
  { cameraTilt = 0, rate = 60 }: Partial<Pick<Clip, 'cameraTilt' | 'rate'>> = {},
): Clip => {
  const dive = name.startsWith('1') ? '101B' : name.startsWith('2') ? '201A' : '401B'
  return { name, dive, sound: name.endsWith('sound'), shows, simulated, cameraTilt, rate }
}

/**
 * The clips that are drawn and kept under `public/media/clips/`: of each dive from each board a sound one and what went wrong
 * before, so that a diver's dive can be held against her earlier one, and against the same dive from the other board.
 */
export const clips: readonly Clip[] = [
  clip('101b-sound', forwardPike(1, {}), 'a sound forward dive, pike, from 1 m'),
  clip(
    '101b-arms-short',
    forwardPike(1, { armsShort: 30, short: 9 }),
    'arms an hour short of twelve in the press, and the line at the entry short',
    { cameraTilt: 2 },
  ),
  clip('101b-3m-sound', forwardPike(3, {}), 'a sound forward dive, pike, from 3 m'),
  clip(
    '101b-3m-open-pike',
    forwardPike(3, { openPike: 34, short: -12 }),
    'a forward dive from 3 m whose pike stays open, past upright at the entry',
  ),
  clip('401b-sound', inwardPike(1, {}), 'a sound inward dive, pike, from 1 m'),
  clip('401b-open-pike', inwardPike(1, { openPike: 38 }), 'an inward dive whose pike stays open'),
  clip(
    '401b-leaning',
    inwardPike(1, { lean: 9, short: 4 }),
    'an inward dive whose line leans back over the board at take-off, and which comes down nearer to it',
    { cameraTilt: -1.5 },
  ),
  clip('401b-3m-sound', inwardPike(3, {}), 'a sound inward dive, pike, from 3 m'),
  clip(
    '401b-3m-arms-short',
    inwardPike(3, { armsShort: 45, short: 14 }),
    'an inward dive from 3 m with the arms late in the press, short at the entry',
  ),
  clip('201a-1m-sound', backStraight(1, {}), 'a sound back dive, straight, from 1 m'),
  clip(
    '201a-1m-short',
    backStraight(1, { short: 16 }),
    'a back dive that falls short, filmed at 30 pictures a second',
    {
      rate: 30,
      cameraTilt: 1,
    },
  ),
  clip('201a-sound', backStraight(3, {}), 'a sound back dive, straight, from 3 m'),
  clip(
    '201a-arched',
    backStraight(3, { arch: 24, short: -6 }),
    'a back dive, straight, arched in flight and past upright at the entry',
  ),
]
