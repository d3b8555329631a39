/** Where a skill is done. A belt is part of the place: work in a belt is not the same work without it. */
export const places = [
  'floor',
  'trampoline',
  'trampoline-belt',
  'dry-board',
  'dry-board-belt',
  'poolside',
  '1m',
  '3m',
  '5m',
  '7.5m',
  '10m',
] as const

export type Place = (typeof places)[number]

/** What follows from a place. */
export interface PlaceFacts {
  /** How the programme writes it on screen: a board is written by its height. */
  readonly label: string
  /** Height over the water in metres; null where there is no water below. Poolside is 0. */
  readonly height: number | null
  /** True on a springboard or platform over water. */
  readonly board: boolean
  readonly belt: boolean
}

const fact = (label: string, height: number | null, board: boolean, belt: boolean): PlaceFacts => ({
  label,
  height,
  board,
  belt,
})

/** The facts of every place, by its key. */
export const placeFacts: Readonly<Record<Place, PlaceFacts>> = {
  floor: fact('floor', null, false, false),
  trampoline: fact('trampoline', null, false, false),
  'trampoline-belt': fact('trampoline, in the belt', null, false, true),
  'dry-board': fact('dry board', null, false, false),
  'dry-board-belt': fact('dry board, in the belt', null, false, true),
  poolside: fact('poolside', 0, false, false),
  '1m': fact('1 m', 1, true, false),
  '3m': fact('3 m', 3, true, false),
  '5m': fact('5 m', 5, true, false),
  '7.5m': fact('7.5 m', 7.5, true, false),
  '10m': fact('10 m', 10, true, false),
}

/** True when the place is over water, so that a stand-down from the water closes it. */
export const overWater = (place: Place): boolean => placeFacts[place].height !== null
