import type { Scope } from '../../access/scope'
import { type PairKey, pairKey } from '../../curriculum/edition/curriculum'
import type { Place } from '../../curriculum/place'
import { asAccount } from '../../platform/db'
import type { Consents, Purpose, Reach } from '../consent'
import { programmeInstant } from '../device-clock'
import type { ClosesKind, IncidentKind } from '../record'
import { dayOf, type EpochDay, type Instant } from '../time'
import { listConsents } from './consents'
import { listGrowth } from './growth'

/** Who did something, and when. */
export interface Done {
  readonly by: string
  readonly at: Instant
}

export interface IncidentEntry {
  readonly id: string
  readonly pair: PairKey
  readonly kind: IncidentKind
  readonly by: string
  readonly happenedAt: Instant
  readonly receivedAt: Instant
  readonly note: string | null
  /** `statement` is null for whoever may not read it. */
  readonly release: (Done & { readonly reason: string | null; readonly statement: string | null }) | null
}

export interface StandDownEntry extends Done {
  readonly id: string
  readonly closes: ClosesKind
  readonly from: EpochDay
  readonly until: EpochDay | null
  /** Null where none was written, or for whoever may not read it. */
  readonly reason: string | null
  readonly ended: Done | null
}

export interface GrowthEntry {
  readonly id: string
  readonly notedOn: EpochDay
  readonly by: string
  readonly note: string | null
}

export interface ConsentEntry extends Done {
  readonly id: string
  readonly purpose: Purpose
  readonly given: boolean
  readonly reach: Reach | null
  /** Null for whoever may not read it. */
  readonly saidBy: string | null
}

/** All that keeps a diver safe beside her record, each newest first, with the words that this account may read. */
export interface Safety {
  readonly incidents: readonly IncidentEntry[]
  readonly standDowns: readonly StandDownEntry[]
  readonly growth: readonly GrowthEntry[]
  readonly consents: readonly ConsentEntry[]
}

/** What a list of divers shows of each: the incidents that are open, and how the consents that this account sees stand. */
export interface ToDo {
  readonly openIncidents: (diver: string) => number
  readonly consents: (diver: string) => Consents
}

/** What is to do about some divers, in three queries whatever their number. */
export function readToDo(scope: Scope, divers: readonly string[]): Promise<ToDo> {
  return asAccount(scope.account, async (tx) => {
    const about = { diverId: { in: [...divers] } }
    const incidents = await tx.incident.findMany({ where: about, select: { id: true, diverId: true } })
    const releases = await tx.release.findMany({ where: { ...about, kind: 'incident' }, select: { subjectId: true } })
    const cleared = new Set(releases.map(({ subjectId }) => subjectId))
    const open = incidents.filter(({ id }) => !cleared.has(id))
    return {
      openIncidents: (diver) => open.filter(({ diverId }) => diverId === diver).length,
      consents: await listConsents(tx, divers),
    }
  })
}

/** What asks for care on a diver's page: how her consents stand, and when growth was noted. */
export function readCare(
  scope: Scope,
  diver: string,
): Promise<{ readonly consents: Consents; readonly grown: readonly EpochDay[] }> {
  return asAccount(scope.account, async (tx) => ({
    consents: (await listConsents(tx, [diver]))(diver),
    grown: (await listGrowth(tx, [diver]))(diver),
  }))
}

/** Reads it for a diver in scope; of another one there is nothing to be seen. */
export function readSafety(scope: Scope, diver: string): Promise<Safety> {
  return asAccount(scope.account, async (tx) => {
    const about = { where: { diverId: diver } }
    const texts = new Map((await tx.words.findMany(about)).map((row) => [row.id, row.text]))
    const text = (id: string | null): string | null => (id === null ? null : (texts.get(id) ?? null))
    const releases = await tx.release.findMany({ where: { diverId: diver, kind: 'incident' } })
    const incidents = await tx.incident.findMany({ ...about, orderBy: { happenedAt: 'desc' } })
    const standDowns = await tx.standDown.findMany({ ...about, orderBy: [{ from: 'desc' }, { at: 'desc' }] })
    const growth = await tx.growthNote.findMany({ ...about, orderBy: [{ notedOn: 'desc' }, { at: 'desc' }] })
    const consents = await tx.consent.findMany({ ...about, orderBy: [{ recordedAt: 'desc' }, { id: 'desc' }] })
    return {
      incidents: incidents.map((row) => {
        const release = releases.find(({ subjectId }) => subjectId === row.id)
        return {
          id: row.id,
          pair: pairKey({ skill: row.skill, place: row.place as Place }),
          kind: row.kind as IncidentKind,
          by: row.by,
          happenedAt: programmeInstant(row.happenedAt.getTime(), Number(row.offsetMs)),
          receivedAt: row.receivedAt.getTime(),
          note: text(row.noteId),
          release: release
            ? {
                by: release.by,
                at: release.at.getTime(),
                reason: text(release.reasonId),
                statement: text(release.statementId),
              }
            : null,
        }
      }),
      standDowns: standDowns.map((row) => ({
        id: row.id,
        closes: row.closes as ClosesKind,
        from: dayOf(row.from),
        until: row.until ? dayOf(row.until) : null,
        by: row.by,
        at: row.at.getTime(),
        reason: text(row.reasonId),
        ended: row.endedBy && row.endedAt ? { by: row.endedBy, at: row.endedAt.getTime() } : null,
      })),
      growth: growth.map((row) => ({
        id: row.id,
        notedOn: dayOf(row.notedOn),
        by: row.by,
        note: text(row.noteId),
      })),
      consents: consents.map((row) => ({
        id: row.id,
        purpose: row.purpose as Purpose,
        given: row.given,
        by: row.recordedBy,
        at: row.recordedAt.getTime(),
        reach: row.reach as Reach | null,
        saidBy: text(row.saidById),
      })),
    }
  })
}
