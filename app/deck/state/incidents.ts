import type { DeckItem, IncidentItem, SnapshotDiver, SnapshotPair } from '@/lib/assessment/deck/contract'
import { pairName } from '@/lib/assessment/readiness/wording'
import type { IncidentKind } from '@/lib/assessment/record'
import type { PairKey } from '@/lib/curriculum/edition/curriculum'
import { overWater, type Place } from '@/lib/curriculum/place'
import { canRestOn } from '@/lib/curriculum/tree/resting-on'
import type { Stamp } from './items'
import type { Roster } from './roster'

/** Where an incident is: `sent` = the server has it, but what is shown of the divers is from before. */
export type Whereabouts = 'unsent' | 'refused' | 'sent'

/** An incident that was recorded on this phone and that the snapshot does not know yet. */
export interface LocalIncident {
  readonly item: IncidentItem
  readonly at: Whereabouts
}

/** What happened to a diver at a pair, now. `attempt` where it was kept already. */
export const makeIncident = (
  { diver, skill, place }: { readonly diver: string; readonly skill: string; readonly place: Place },
  what: IncidentKind,
  more: { readonly note: string; readonly attempt: string | null },
  { now, device, newId }: Stamp,
): IncidentItem => ({
  kind: 'incident',
  id: newId(),
  diver,
  skill,
  place,
  what,
  attempt: more.attempt,
  note: more.note.trim() === '' ? null : more.note.trim(),
  happenedAt: now,
  device,
})

interface Held {
  readonly unsent: readonly DeckItem[]
  readonly refused: readonly { readonly item: DeckItem }[]
}

const isIncident = (item: DeckItem): item is IncidentItem => item.kind === 'incident'

/** The incidents of this phone that are not in the snapshot: waiting, refused, or sent since it was taken. */
export function localIncidents(
  { snapshot }: Roster,
  recorded: readonly IncidentItem[],
  held: Held,
): readonly LocalIncident[] {
  const known = new Set(snapshot.incidents?.map(({ id }) => id))
  const unsent = held.unsent.filter(isIncident)
  const refused = held.refused.map(({ item }) => item).filter(isIncident)
  const all = new Map([...recorded, ...refused, ...unsent].map((item) => [item.id, item]))
  const at = (id: string): Whereabouts =>
    unsent.some((item) => item.id === id) ? 'unsent' : refused.some((item) => item.id === id) ? 'refused' : 'sent'
  return [...all.values()].map((item) => ({ item, at: at(item.id) })).filter(({ item }) => !known.has(item.id))
}

const where: Record<Whereabouts, string> = {
  unsent: 'recorded on this phone, not sent yet',
  refused: 'recorded on this phone, not taken by the server: tell the head coach',
  sent: 'sent from this phone',
}

/** "Bad landing at 14:05, recorded on this phone, not sent yet"; `clock` writes an instant of this phone. */
export const sayIncident = ({ item, at }: LocalIncident, clock: (instant: number) => string): string =>
  `${item.what.charAt(0).toUpperCase()}${item.what.slice(1)} at ${clock(item.happenedAt)}, ${where[at]}`

/**
 * The roster with what the incidents of this phone pause, at once and before the server knows: the pair, all that can rest
 * on it, and after a knock to the head the water. The server closes no more than this; what it leaves open opens again with
 * the next snapshot. The same roster when there are none.
 */
export function withIncidents(
  roster: Roster,
  incidents: readonly LocalIncident[],
  clock: (instant: number) => string,
): Roster {
  if (incidents.length === 0) return roster
  const divers = new Map(roster.divers)
  for (const incident of incidents) {
    const diver = divers.get(incident.item.diver)
    if (diver) divers.set(diver.id, paused(roster, diver, incident, sayIncident(incident, clock)))
  }
  const { snapshot } = roster
  return {
    ...roster,
    divers,
    snapshot: { ...snapshot, divers: snapshot.divers.map((one) => divers.get(one.id) ?? one) },
  }
}

function paused(roster: Roster, diver: SnapshotDiver, { item }: LocalIncident, said: string): SnapshotDiver {
  const { curriculum } = roster
  const pair: PairKey = `${item.skill}@${item.place}`
  const above = canRestOn(curriculum, pair)
  const knock = item.what === 'knock to the head'
  const because = (key: PairKey): string | null => {
    const place = curriculum.pairs.get(key)?.holding.place
    if (knock && place && overWater(place)) return `${said}: out of the water until the head coach clears it.`
    if (key === pair) return `${said}: paused until a head coach clears it.`
    return above.has(key) ? `It rests on ${pairName(pair, { curriculum })}. ${said}.` : null
  }
  const close = (entry: SnapshotPair): SnapshotPair => {
    const why = because(entry.pair)
    return why ? { ...entry, state: 'closed', because: why } : entry
  }
  return {
    ...diver,
    standDown: knock ? `${diver.shortName} is stood down from the water. ${said}.` : diver.standDown,
    pairs: diver.pairs.map(close),
  }
}
