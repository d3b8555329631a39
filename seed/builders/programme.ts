import type { VenueFeature } from '../../lib/curriculum/requirement/model'
import { insertRow, type Owner } from './rows'

export interface ProgrammeRow {
  readonly id: string
  readonly name: string
  readonly zone: string
  readonly createdAt: Date
}

/** A programme; it is marked as the demo, and its clock set, by `markAsDemo` only. */
export const insertProgramme = (owner: Owner, row: ProgrammeRow): Promise<void> =>
  insertRow(owner, 'Programme', { ...row })

/** Shows the demo's sign-ins from now on, and sets the programme's clock: its time minus the system's. */
export async function markAsDemo(owner: Owner, programme: string, clockOffsetMs: number): Promise<void> {
  await owner.query('UPDATE "Programme" SET "isDemo" = true, "clockOffsetMs" = $2 WHERE "id" = $1', [
    programme,
    clockOffsetMs,
  ])
}

export interface ClubRow {
  readonly id: string
  readonly programmeId: string
  readonly name: string
  readonly zone: string
  readonly createdAt: Date
}

export const insertClub = (owner: Owner, row: ClubRow): Promise<void> => insertRow(owner, 'Club', { ...row })

export interface VenueFlagRow {
  readonly id: string
  readonly clubId: string
  readonly feature: VenueFeature
  readonly has: boolean
  readonly recordedAt: Date
  readonly recordedBy: string
}

export const insertVenueFlag = (owner: Owner, row: VenueFlagRow): Promise<void> =>
  insertRow(owner, 'VenueFlag', { ...row })

export interface SquadRow {
  readonly id: string
  readonly clubId: string
  readonly name: string
  readonly createdAt: Date
}

export const insertSquad = (owner: Owner, row: SquadRow): Promise<void> => insertRow(owner, 'Squad', { ...row })
