import type { DeckSnapshot, PairState, SnapshotDiver, SnapshotPair } from '@/lib/assessment/deck/contract'
import type { Curriculum, Pair } from '@/lib/curriculum/edition/curriculum'
import { indexEdition } from '@/lib/curriculum/edition/index-edition'
import type { Place } from '@/lib/curriculum/place'

/** A snapshot indexed for reading. */
export interface Roster {
  readonly snapshot: DeckSnapshot
  readonly curriculum: Curriculum
  readonly divers: ReadonlyMap<string, SnapshotDiver>
}

/** Indexes a snapshot. Throws when its edition cannot be read by this deck. */
export const readRoster = (snapshot: DeckSnapshot): Roster => ({
  snapshot,
  curriculum: indexEdition(snapshot.edition.document, snapshot.edition.hash),
  divers: new Map(snapshot.divers.map((diver) => [diver.id, diver])),
})

/** A pair of the edition as it stands for a diver. */
export interface StandingPair {
  readonly pair: Pair
  readonly state: PairState
  readonly because: string | null
}

export interface PairGroup {
  readonly state: PairState
  readonly pairs: readonly StandingPair[]
}

/** In the order in which a coach on the deck has use for them. */
const order: readonly PairState[] = ['to sign', 'open', 'held', 'closed']

const closer = (a: StandingPair, b: StandingPair): number =>
  a.pair.level - b.pair.level || (a.pair.skill.title < b.pair.skill.title ? -1 : 1)

/** A dive number or words of a title, e.g. `103`, `tuck`; spaces and case do not matter in a number. */
function fits(pair: Pair, words: string): boolean {
  const wanted = words.trim().toLowerCase()
  const number = wanted.replaceAll(' ', '')
  return (pair.skill.dive?.toLowerCase().startsWith(number) ?? false) || pair.skill.title.toLowerCase().includes(wanted)
}

export interface PairFilter {
  readonly words: string
  readonly place: Place | null
}

/** What a diver can be rated on, grouped by how it stands; groups without any are left out, pairs not in the edition too. */
export function groupPairs({ curriculum }: Roster, diver: SnapshotDiver, filter: PairFilter): readonly PairGroup[] {
  const standing = diver.pairs.flatMap(({ pair: key, state, because }: SnapshotPair): StandingPair[] => {
    const pair = curriculum.pairs.get(key)
    if (!pair || (filter.place !== null && pair.holding.place !== filter.place)) return []
    return fits(pair, filter.words) ? [{ pair, state, because }] : []
  })
  return order
    .map((state) => ({ state, pairs: standing.filter((entry) => entry.state === state).sort(closer) }))
    .filter(({ pairs }) => pairs.length > 0)
}

/** The pairs of the edition that a number or a word finds, the lowest level first. */
export const findPairs = ({ curriculum }: Roster, words: string): readonly Pair[] =>
  [...curriculum.pairs.values()].filter((pair) => fits(pair, words)).sort((a, b) => a.level - b.level)

/** The level proposed for judging: the one that the diver works towards, or the lowest that teaches the pair when that is higher. */
export function proposedLevel({ curriculum }: Roster, diver: SnapshotDiver, pair: Pair): string {
  const towards = curriculum.levelIndex(diver.level)
  return curriculum.levels[Math.max(towards, pair.level)]?.key ?? diver.level
}

/** The squad of the rotation: the one that is chosen, or the first that the diver is in; null when she is in none. */
export function rotationOf({ snapshot }: Roster, diver: string, squad: string | null): string | null {
  const inIt = snapshot.squads.filter((candidate) => candidate.divers.includes(diver))
  return (inIt.find(({ id }) => id === squad) ?? inIt[0])?.id ?? null
}

/** The diver after this one in a squad's rotation, of those who are here; null when there is no other. */
export function nextDiver(
  { snapshot, divers }: Roster,
  diver: string,
  squad: string | null,
  here: readonly string[] | null = null,
): SnapshotDiver | null {
  const all = snapshot.squads.find(({ id }) => id === squad)?.divers ?? []
  const members = here ? all.filter((member) => member === diver || here.includes(member)) : all
  const next = members[(members.indexOf(diver) + 1) % members.length]
  return next === undefined || next === diver ? null : (divers.get(next) ?? null)
}
