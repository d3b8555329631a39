import type { Scope } from '../../access/scope'
import type { Tx } from '../../platform/db'
import type { DiverRecord } from '../record'
import { dayIn } from '../time'
import { type RecordRows, toRecord } from './to-record'

/** A diver as a page needs her: who, where, and the record that the engine reads. */
export interface DiverFile {
  readonly id: string
  readonly givenName: string
  readonly familyName: string
  readonly club: string
  readonly clubName: string
  readonly zone: string
  readonly squads: readonly string[]
  readonly record: DiverRecord
}

const inForce = (at: Date) => ({ from: { lte: at }, OR: [{ to: null }, { to: { gt: at } }] })

/**
 * The files of all divers in scope, or of those named; a diver outside the scope is not among them.
 * One query a table, whatever the number of divers.
 */
export async function listDiverFiles(tx: Tx, scope: Scope, only?: readonly string[]): Promise<DiverFile[]> {
  const at = new Date(scope.at)
  const clubs = await tx.club.findMany({ where: { programmeId: scope.programme } })
  const memberships = await tx.diverMembership.findMany({
    where: {
      ...inForce(at),
      clubId: { in: scope.clubs ? [...scope.clubs] : clubs.map((club) => club.id) },
      ...(only ? { diverId: { in: [...only] } } : {}),
    },
  })
  const ids = memberships.map((membership) => membership.diverId)
  const about = { where: { diverId: { in: ids } } }
  const words = await tx.diverWords.findMany(about)
  const squads = await tx.squad.findMany({ where: { clubId: { in: clubs.map((club) => club.id) } } })
  const squadDivers = await tx.squadDiver.findMany(about)
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
  const zones = new Map(clubs.map((club) => [club.id, club.zone]))
  return memberships.map((membership) => {
    const club = clubs.find((candidate) => candidate.id === membership.clubId)
    const word = words.find((candidate) => candidate.diverId === membership.diverId)
    const zone = club?.zone ?? scope.zone
    return {
      id: membership.diverId,
      givenName: word?.givenName ?? 'Name',
      familyName: word?.familyName ?? 'erased',
      club: membership.clubId,
      clubName: club?.name ?? '',
      zone,
      squads: squadDivers
        .filter((row) => row.diverId === membership.diverId)
        .flatMap((row) => squads.find((squad) => squad.id === row.squadId)?.name ?? []),
      record: toRecord(membership.diverId, {
        ...of(membership.diverId),
        born: word?.bornOn ? dayIn(word.bornOn.getTime(), 'UTC') : null,
        venue: venue.filter((flag) => flag.clubId === membership.clubId),
        zoneOf: (clubId) => zones.get(clubId) ?? zone,
      }),
    }
  })
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
