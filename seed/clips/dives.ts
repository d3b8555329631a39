import type { Key, SimulatedDive } from './dive'

const key = (at: number, trunk: number, hip: number, knee: number, arm: number): Key => ({ at, trunk, hip, knee, arm })

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
  key(0, 0, 0, 0, 175),
  key(0.35, 6, 22, 34, 160),
  key(0.7, 4, 24, 40, 4 + armsShort),
  key(0.9, trunk + lean, 6, 8, armsShort / 2),
  key(1, trunk + lean, 0, 0, 0),
]

/** Half a somersault forwards in pike: rise, fold, open, line up. For dives that face out and those that face the board. */
const pikeFlight = (trunk: number, { lean = 0, openPike = 0, short = 0 }: Faults): Key[] => [
  key(0, trunk + lean, 0, 0, 0),
  key(0.16, trunk + lean + 22, 34, 0, 20),
  key(0.46, 128, 132 - openPike, 0, 62 - openPike / 3),
  key(0.56, 138, 128 - openPike, 0, 62 - openPike / 3),
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

const forwardPike = (faults: Faults): SimulatedDive => ({
  height: 1,
  facing: 1,
  speed: 4.1,
  away: 0.9,
  press: pressed(7, faults),
  flight: pikeFlight(7, faults),
})
const inwardPike = (faults: Faults): SimulatedDive => ({
  height: 1,
  facing: -1,
  speed: 3.9,
  away: 0.75,
  press: pressed(4, faults),
  flight: pikeFlight(4, faults),
})
const backStraight = (faults: Faults): SimulatedDive => ({
  height: 3,
  facing: -1,
  speed: 4.6,
  away: 0.85,
  press: pressed(-5, faults),
  flight: straightBack(faults),
})

/** A film of one simulated dive: its file's name, the dive, and what a coach should see. */
export interface Clip {
  readonly name: string
  readonly dive: '101B' | '401B' | '201A'
  readonly shows: string
  readonly simulated: SimulatedDive
  /** Degrees that the camera was held askew. */
  readonly cameraTilt: number
}

/** The clips that are drawn and kept under `public/media/clips/`. */
export const clips: readonly Clip[] = [
  { name: '101b-sound', dive: '101B', shows: 'a sound forward dive, pike', simulated: forwardPike({}), cameraTilt: 0 },
  {
    name: '101b-arms-short',
    dive: '101B',
    shows: 'arms an hour short of twelve in the press, and the line at the entry short',
    simulated: forwardPike({ armsShort: 30, short: 9 }),
    cameraTilt: 2,
  },
  {
    name: '401b-open-pike',
    dive: '401B',
    shows: 'an inward dive whose pike stays open',
    simulated: inwardPike({ openPike: 38 }),
    cameraTilt: 0,
  },
  {
    name: '401b-leaning',
    dive: '401B',
    shows: 'an inward dive whose line leans back over the board at take-off',
    simulated: inwardPike({ lean: 9, short: 4 }),
    cameraTilt: -1.5,
  },
  {
    name: '201a-arched',
    dive: '201A',
    shows: 'a back dive, straight, arched in flight and past upright at the entry',
    simulated: backStraight({ arch: 24, short: -6 }),
    cameraTilt: 0,
  },
]
