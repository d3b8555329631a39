import type { Scope } from '../../access/scope'
import type { Tx } from '../../platform/db'
import type { DiverRecord } from '../record'
import { type DiverHere, listDivers } from './divers-here'
import { type RecordRows, toRecord } from './to-record'

/** A diver as a page needs her: who, where, and the record that the engine reads. */
export interface DiverFile extends DiverHere {
  readonly record: DiverRecord
}

/**
 * The files of all divers in scope, or of those named; a diver outside the scope is not among them.
 * One query a table, whatever the number of divers.
 */
export async function listDiverFiles(tx: Tx, scope: Scope, only?: readonly string[]): Promise<DiverFile[]> {
  const { divers, zones } = await listDivers(tx, scope, only)
  const about = { where: { diverId: { in: divers.map((diver) => diver.id) } } }
  const venue = await tx.venueFlag.findMany({ orderBy: { recordedAt: 'asc' } })
  const rows: Omit<RecordRows, 'born' | 'venue' | 'zoneOf'> = {
    attempts: await tx.attempt.findMany({ ...about, orderBy: [{ attemptedAt: 'asc' }, { id: 'asc' }] }),
    observations: await tx.observation.findMany(about),
    signOffs: await tx.signOff.findMany({ ...about, orderBy: { signedAt: 'asc' } }),
    revocations: await tx.revocation.findMany(about),
    recognitions: await tx.recognition.findMany({ ...about, orderBy: { recognisedAt: 'asc' } }),
    decisions: await tx.decision.findMany({ ...about, orderBy: { decidedAt: 'asc' } }),
    incidents: await tx.incident.findMany(about),
    releases: await tx.release.findMany(about),
    standDowns: await tx.standDown.findMany(about),
  }
  const of = groupByDiver(rows)
  return divers.map((diver) => ({
    ...diver,
    record: toRecord(diver.id, {
      ...of(diver.id),
      born: diver.born,
      venue: venue.filter((flag) => flag.clubId === diver.club),
      zoneOf: (clubId) => zones.get(clubId) ?? diver.zone,
    }),
  }))
}

/** The file of one diver in scope, or null: outside the scope she does not exist. */
export async function findDiverFile(tx: Tx, scope: Scope, diver: string): Promise<DiverFile | null> {
  return (await listDiverFiles(tx, scope, [diver]))[0] ?? null
}

type Grouped = Omit<RecordRows, 'born' | 'venue' | 'zoneOf'>

function groupByDiver(rows: Grouped): (diver: string) => Grouped {
  const byDiver = <Row extends { diverId: string }>(list: readonly Row[]) => {
    const groups = new Map<string, Row[]>()
    for (const row of list) {
      const group = groups.get(row.diverId)
      if (group) group.push(row)
      else groups.set(row.diverId, [row])
    }
    return (diver: string): Row[] => groups.get(diver) ?? []
  }
  const attempts = byDiver(rows.attempts)
  const observations = byDiver(rows.observations)
  const signOffs = byDiver(rows.signOffs)
  const revocations = byDiver(rows.revocations)
  const recognitions = byDiver(rows.recognitions)
  const decisions = byDiver(rows.decisions)
  const incidents = byDiver(rows.incidents)
  const releases = byDiver(rows.releases)
  const standDowns = byDiver(rows.standDowns)
  return (diver) => ({
    attempts: attempts(diver),
    observations: observations(diver),
    signOffs: signOffs(diver),
    revocations: revocations(diver),
    recognitions: recognitions(diver),
    decisions: decisions(diver),
    incidents: incidents(diver),
    releases: releases(diver),
    standDowns: standDowns(diver),
  })
}
