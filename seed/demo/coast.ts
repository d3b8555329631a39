import type { ClubRole, ProgrammeRole } from '../../lib/access/actor'

/** An invented coast: no club, person or address in it exists. */
export const programmeName = 'Kelder Coast'

export type ClubKey = 'saltmarsh' | 'harrow-point'
export type SquadKey = 'shore' | 'jetty' | 'tide' | 'cove' | 'headland'
export type CoachKey = 'marguerite' | 'joel' | 'hanne' | 'rafael' | 'oluwaseun' | 'petra'

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
]

export interface SquadData {
  readonly key: SquadKey
  readonly club: ClubKey
  readonly name: string
  /** 0 is Sunday. */
  readonly weekdays: readonly number[]
  readonly saturdayHour: number
  /** Who stands on the deck, by turns. */
  readonly coaches: readonly CoachKey[]
}

export const squads: readonly SquadData[] = [
  {
    key: 'shore',
    club: 'saltmarsh',
    name: 'Shore squad',
    weekdays: [2, 6],
    saturdayHour: 9,
    coaches: ['hanne', 'joel', 'rafael'],
  },
  {
    key: 'jetty',
    club: 'saltmarsh',
    name: 'Jetty squad',
    weekdays: [2, 4, 6],
    saturdayHour: 9,
    coaches: ['joel', 'marguerite', 'rafael'],
  },
  {
    key: 'tide',
    club: 'saltmarsh',
    name: 'Tide squad',
    weekdays: [1, 4, 6],
    saturdayHour: 11,
    coaches: ['marguerite', 'joel', 'marguerite', 'rafael'],
  },
  {
    key: 'cove',
    club: 'harrow-point',
    name: 'Cove squad',
    weekdays: [3, 6],
    saturdayHour: 10,
    coaches: ['petra', 'oluwaseun', 'rafael'],
  },
  {
    key: 'headland',
    club: 'harrow-point',
    name: 'Headland squad',
    weekdays: [1, 3, 5],
    saturdayHour: 10,
    coaches: ['oluwaseun', 'petra', 'rafael'],
  },
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
    leaning: 0.12,
    thorough: 0.05,
  },
  {
    key: 'marguerite',
    name: 'Marguerite Achterberg',
    initials: 'MA',
    email: 'marguerite@saltmarsh-diving.example',
    posts: [at('saltmarsh', 'head')],
    sees: 'decides; two boards are asked for and a level waits',
    leaning: -0.12,
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
    key: 'hanne',
    name: 'Hanne Boateng',
    initials: 'HB',
    email: 'hanne@saltmarsh-diving.example',
    posts: [at('saltmarsh', 'assistant')],
    sees: 'left at the turn of the year',
    leaning: 0.2,
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
    sees: 'both clubs side by side',
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
