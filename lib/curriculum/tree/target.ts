import type { Curriculum, PairKey } from '../edition/curriculum'
import { pairKey } from '../edition/curriculum'
import type { Pointer } from '../edition/pointer'
import { pointerTo } from '../edition/pointer'
import type { Requirement } from '../requirement/model'

/** What can be reached in a curriculum: a (skill, place), a level, a board move. */
export type TreeKey = PairKey | `level:${string}` | `move:${string}:${string}`

/** The key of a level in the tree. */
export const levelKey = (level: string): TreeKey => `level:${level}`
/** The key of a board move in the tree. */
export const moveKey = (move: { readonly family: string; readonly to: string }): TreeKey =>
  `move:${move.family}:${move.to}`

/** A target, where it stands in the document, and what must hold before it is open or ready. */
export interface TreeTarget {
  readonly key: TreeKey
  readonly path: Pointer
  /** Of a level above the first, the level below is part of it; of a dive, the implicit board move; null: nothing. */
  readonly requirement: Requirement | null
}

function listPairs(curriculum: Curriculum): TreeTarget[] {
  return curriculum.document.skills.flatMap((skill, s) =>
    skill.places.map((at, p) => {
      const key = pairKey({ skill: skill.key, place: at.place })
      return {
        key,
        path: pointerTo('skills', s, 'places', p),
        requirement: curriculum.pairs.get(key)?.prerequisite ?? null,
      }
    }),
  )
}

function listLevels(curriculum: Curriculum): TreeTarget[] {
  return curriculum.levels.map((level, index) => {
    const below = curriculum.levels[index - 1]
    const requirement: Requirement = below
      ? { kind: 'all', of: [{ kind: 'level', level: below.key }, level.requirement] }
      : level.requirement
    return { key: levelKey(level.key), path: pointerTo('levels', index), requirement }
  })
}

/** Every target of a curriculum, in document order: pairs, then levels, then board moves. */
export const listTargets = (curriculum: Curriculum): TreeTarget[] => [
  ...listPairs(curriculum),
  ...listLevels(curriculum),
  ...curriculum.boardMoves.map((move, index) => ({
    key: moveKey(move),
    path: pointerTo('boardMoves', index),
    requirement: move.requirement,
  })),
]
