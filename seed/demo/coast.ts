import type { ClubRole, ProgrammeRole } from '../../lib/access/actor'

/** An invented coast: no club, person or address in it exists. */
export const programmeName = 'Kelder Coast'

export type ClubKey = 'saltmarsh' | 'harrow-point' | 'northquay' | 'gannet-ness'
export type SquadKey = 'shore' | 'jetty' | 'tide' | 'cove' | 'headland' | 'quay' | 'lantern' | 'beacon' | 'ness'
export type CoachKey =
  | 'marguerite'
  | 'joel'
  | 'hanne'
  | 'tobiah'
  | 'rafael'
  | 'oluwaseun'
  | 'petra'
  | 'ines'
  | 'birk'
  | 'chidi'
  | 'lucia'
  | 'solveig'

export interface ClubData {
  readonly key: ClubKey
  readonly name: string
  /** Whether it has a 3 m board; without one no diver of it can be moved up. */
  readonly board3m: boolean
  readonly videoHost: string
  readonly head: CoachKey
}

export const clubs: readonly ClubData[] = [
  {
    key: 'saltmarsh',
    name: 'Saltmarsh Diving Club',
    board3m: true,
    videoHost: 'video.saltmarsh-diving.example',
    head: 'marguerite',
  },
  {
    key: 'harrow-point',
    name: 'Harrow Point Divers',
    board3m: false,
    videoHost: 'clips.harrow-point.example',
    head: 'oluwaseun',
  },
  {
    key: 'northquay',
    name: 'Northquay Springboard Club',
    board3m: true,
    videoHost: 'film.northquay.example',
    head: 'ines',
  },
  {
    key: 'gannet-ness',
    name: 'Gannet Ness Diving',
    board3m: true,
    videoHost: 'video.gannet-ness.example',
    head: 'solveig',
  },
]

export interface SquadData {
  readonly key: SquadKey
  readonly club: ClubKey
  readonly name: string
  /** Days with a rated session; 0 is Sunday. */
  readonly weekdays: readonly number[]
  readonly hour: number
  /** Who stands on the deck, by turns. */
  readonly coaches: readonly CoachKey[]
}

const squad = (
  key: SquadKey,
  club: ClubKey,
  name: string,
  weekdays: readonly number[],
  hour: number,
  ...coaches: CoachKey[]
): SquadData => ({ key, club, name: `${name} squad`, weekdays, hour, coaches })

export const squads: readonly SquadData[] = [
  squad('shore', 'saltmarsh', 'Shore', [6], 9, 'hanne', 'joel', 'tobiah'),
  squad('jetty', 'saltmarsh', 'Jetty', [2], 17, 'joel', 'marguerite', 'rafael'),
  squad('tide', 'saltmarsh', 'Tide', [4], 18, 'marguerite', 'tobiah', 'joel', 'marguerite', 'rafael'),
  squad('cove', 'harrow-point', 'Cove', [6], 10, 'petra', 'oluwaseun'),
  squad('headland', 'harrow-point', 'Headland', [3], 17, 'oluwaseun', 'petra', 'rafael'),
  squad('quay', 'northquay', 'Quay', [5], 16, 'birk', 'lucia', 'chidi'),
  squad('lantern', 'northquay', 'Lantern', [2], 18, 'chidi', 'birk', 'ines'),
  squad('beacon', 'northquay', 'Beacon', [4], 17, 'ines', 'lucia', 'birk', 'ines', 'chidi'),
  squad('ness', 'gannet-ness', 'Ness', [6], 11, 'solveig'),
]

export interface AccountData<Key extends string = string> {
  readonly key: Key
  readonly name: string
  readonly initials: string
  readonly email: string
  readonly posts: readonly { readonly club: ClubKey | null; readonly role: ClubRole | ProgrammeRole }[]
  /** What the sign-in page says of the account. */
  readonly sees: string
}

export interface CoachData extends AccountData<CoachKey> {
  /** Added to what this coach sees, in points of a rating: below 0 is severe. */
  readonly leaning: number
  /** How often everything is rated rather than the exceptions. */
  readonly thorough: number
  /** Left the coast on this day, and what was written stays. */
  readonly left?: string
}

const at = (club: ClubKey, role: ClubRole) => ({ club, role })

export const coaches: readonly CoachData[] = [
  {
    key: 'joel',
    name: 'Joel Nakamura-Reed',
    initials: 'JN',
    email: 'joel@saltmarsh-diving.example',
    posts: [at('saltmarsh', 'assistant')],
    sees: 'rates the Shore, Jetty and Tide squads on the deck',
    leaning: 0.1,
    thorough: 0.05,
  },
  {
    key: 'marguerite',
    name: 'Marguerite Achterberg',
    initials: 'MA',
    email: 'marguerite@saltmarsh-diving.example',
    posts: [at('saltmarsh', 'head')],
    sees: 'decides; levels and board moves wait for her',
    leaning: -0.1,
    thorough: 0.25,
  },
  {
    key: 'petra',
    name: 'Petra Holmgaard',
    initials: 'PH',
    email: 'petra@harrow-point.example',
    posts: [at('harrow-point', 'assistant')],
    sees: 'rates the Cove and Headland squads on the deck',
    leaning: -0.02,
    thorough: 0.1,
  },
  {
    key: 'oluwaseun',
    name: 'Oluwaseun Finch',
    initials: 'OF',
    email: 'oluwaseun@harrow-point.example',
    posts: [at('harrow-point', 'head')],
    sees: 'decides in a club without a 3 m board',
    leaning: 0.05,
    thorough: 0.15,
  },
  {
    key: 'rafael',
    name: 'Rafael Stone-Iqbal',
    initials: 'RS',
    email: 'rafael@kelder-coast.example',
    posts: [at('saltmarsh', 'assistant'), at('harrow-point', 'assistant')],
    sees: 'coaches in both clubs',
    leaning: -0.06,
    thorough: 0.1,
  },
  {
    key: 'ines',
    name: 'Ines Valcourt-Ames',
    initials: 'IV',
    email: 'ines@northquay.example',
    posts: [at('northquay', 'head')],
    sees: 'decides; the strictest eye on the coast',
    leaning: -0.4,
    thorough: 0.3,
  },
  {
    key: 'birk',
    name: 'Birk Sandoval-Hay',
    initials: 'BS',
    email: 'birk@northquay.example',
    posts: [at('northquay', 'assistant')],
    sees: 'rates beside her, and is the kindest',
    leaning: 0.45,
    thorough: 0.05,
  },
  {
    key: 'solveig',
    name: 'Solveig Ashdown',
    initials: 'SA',
    email: 'solveig@gannet-ness.example',
    posts: [at('gannet-ness', 'head')],
    sees: 'the only coach of her club: rates, signs and decides',
    leaning: 0,
    thorough: 0.15,
  },
  {
    key: 'chidi',
    name: 'Chidi Marlowe',
    initials: 'CM',
    email: 'chidi@northquay.example',
    posts: [at('northquay', 'assistant')],
    sees: 'rates all three squads',
    leaning: 0.02,
    thorough: 0.1,
  },
  {
    key: 'lucia',
    name: 'Lucía Farrow-Bright',
    initials: 'LF',
    email: 'lucia@northquay.example',
    posts: [at('northquay', 'assistant')],
    sees: 'rates the Quay and Beacon squads on the deck',
    leaning: -0.05,
    thorough: 0.1,
  },
  {
    key: 'tobiah',
    name: 'Tobiah Rennick-Ola',
    initials: 'TR',
    email: 'tobiah@saltmarsh-diving.example',
    posts: [at('saltmarsh', 'assistant')],
    sees: 'rates the Shore and Tide squads on the deck',
    leaning: 0,
    thorough: 0.1,
  },
  {
    key: 'hanne',
    name: 'Hanne Boateng',
    initials: 'HB',
    email: 'hanne@saltmarsh-diving.example',
    posts: [at('saltmarsh', 'assistant')],
    sees: 'left at the turn of the year',
    leaning: 0.15,
    thorough: 0.05,
    left: '2026-01-01',
  },
]

export const officers: readonly AccountData<'constance' | 'emeka'>[] = [
  {
    key: 'constance',
    name: 'Constance Wray',
    initials: 'CW',
    email: 'constance@kelder-coast.example',
    posts: [{ club: null, role: 'reviewer' }],
    sees: 'all four clubs side by side',
  },
  {
    key: 'emeka',
    name: 'Emeka Thornquist',
    initials: 'ET',
    email: 'emeka@kelder-coast.example',
    posts: [{ club: null, role: 'lead' }],
    sees: 'owns the curriculum',
  },
]
