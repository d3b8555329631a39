import type { Scope } from '../../access/scope'
import type { Tx } from '../../platform/db'
import type { DiverRecord } from '../record'
import { type DiverHere, listDivers } from './divers-here'
import { listRows, type Rows } from './record-rows'
import { type RecordRows, toRecord } from './to-record'

/** A diver as a page needs her: who, where, and the record that the engine reads. */
export interface DiverFile extends DiverHere {
  readonly record: DiverRecord
}

/** A diver with the rows about her, for who goes on to add to them. */
export interface DiverRows {
  readonly diver: DiverHere
  readonly rows: RecordRows
}

/** The rows about all divers in scope, or about those named; a diver outside the scope is not among them. */
export async function listDiverRows(tx: Tx, scope: Scope, only?: readonly string[]): Promise<DiverRows[]> {
  const divers = await listDivers(tx, scope, only)
  if (divers.length === 0) return []
  const ids = divers.map((diver) => diver.id)
  const { clubs, venue, ...all } = await listRows(tx, ids)
  const zones = new Map(clubs.map((club) => [club.id, club.zone]))
  const of = groupByDiver(all, ids)
  return divers.map((diver) => ({
    diver,
    rows: {
      ...of(diver.id),
      born: diver.born,
      venue: venue.filter((flag) => flag.clubId === diver.club),
      zoneOf: (clubId) => zones.get(clubId) ?? diver.zone,
    },
  }))
}

/** The file of a diver from the rows about her. */
export const toFile = ({ diver, rows }: DiverRows): DiverFile => ({ ...diver, record: toRecord(diver.id, rows) })

/** The files of all divers in scope, or of those named; a diver outside the scope is not among them. */
export const listDiverFiles = async (tx: Tx, scope: Scope, only?: readonly string[]): Promise<DiverFile[]> =>
  (await listDiverRows(tx, scope, only)).map(toFile)

/** The file of one diver in scope, or null: outside the scope she does not exist. */
export async function findDiverFile(tx: Tx, scope: Scope, diver: string): Promise<DiverFile | null> {
  return (await listDiverFiles(tx, scope, [diver]))[0] ?? null
}

/** The rows of each diver. */
function groupByDiver(all: Rows, divers: readonly string[]): (diver: string) => Rows {
  const groups = new Map(divers.map((diver) => [diver, emptyRows()]))
  for (const kind of Object.keys(all) as (keyof Rows)[])
    for (const row of all[kind]) (groups.get(row.diverId)?.[kind] as (typeof row)[] | undefined)?.push(row)
  return (diver) => groups.get(diver) ?? emptyRows()
}

const emptyRows = (): Rows => ({
  attempts: [],
  observations: [],
  links: [],
  signOffs: [],
  revocations: [],
  recognitions: [],
  decisions: [],
  incidents: [],
  releases: [],
  standDowns: [],
})
