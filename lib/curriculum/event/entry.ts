import type { Tenths } from '../dives/components'
import { difficultyTenths } from '../dives/difficulty'
import type { Family } from '../dives/model'
import { parseDive } from '../dives/parse'
import type { Curriculum, Pair, PairKey } from '../edition/curriculum'
import { placeFacts } from '../place'
import type { SignOffLeaf } from '../requirement/model'
import type { EventPlace } from './model'

/** A dive that the edition teaches at an event's place, as it would stand on a list. */
export interface Entry {
  readonly pair: PairKey
  readonly family: Family
  /** The dive number without its position: what may stand on a list once only. */
  readonly number: string
  readonly tenths: Tenths
  /** The sign-off by which it is held. The same node each time, so that what is found of it is remembered. */
  readonly leaf: SignOffLeaf
}

function entryOf({ key, holding, skill }: Pair): Entry[] {
  const parsed = skill.dive === null ? null : parseDive(skill.dive)
  const { height } = placeFacts[holding.place]
  if (!parsed?.ok || (height !== 1 && height !== 3)) return []
  const difficulty = difficultyTenths(parsed.dive, height)
  if (!difficulty.ok) return []
  const { family, canonical } = parsed.dive
  const leaf = { kind: 'signOff', ...holding } as const
  return [{ pair: key, family, number: canonical.slice(0, -1), tenths: difficulty.tenths, leaf }]
}

const known = new WeakMap<Curriculum, ReadonlyMap<EventPlace, readonly Entry[]>>()

/** Every dive that the edition teaches at the place and that has a difficulty there, in document order. */
export function entriesAt(curriculum: Curriculum, place: EventPlace): readonly Entry[] {
  const made =
    known.get(curriculum) ??
    new Map(
      (['1m', '3m'] as const).map((at) => [
        at,
        [...curriculum.pairs.values()].filter((pair) => pair.at.place === at).flatMap(entryOf),
      ]),
    )
  known.set(curriculum, made)
  return made.get(place) ?? []
}
