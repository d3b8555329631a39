import type { Curriculum, Pair } from '../edition/curriculum'
import { indexEdition } from '../edition/index-edition'
import type { Pointer } from '../edition/pointer'
import { pointerTo } from '../edition/pointer'
import type { EditionDocument } from '../model'
import { placeFacts } from '../place'
import type { Holding, Requirement } from '../requirement/model'
import { alwaysBefore } from '../tree/before'

/** A requirement as its author wrote it, and whose it is. */
export interface WrittenRequirement {
  readonly of: 'prerequisite' | 'level' | 'board move'
  /** Whose, in words: `101C at 1 m`. */
  readonly owner: string
  /** Index of the level that teaches the pair, or of the level itself; null for a board move. */
  readonly level: number | null
  readonly path: Pointer
  readonly requirement: Requirement
}

/** A pair and where it stands in the document. */
export interface WrittenPair {
  readonly pair: Pair
  readonly name: string
  readonly path: Pointer
}

/** What the rules look at: the document, its index, and its pairs and requirements with their places. */
export interface Subject {
  readonly document: EditionDocument
  readonly curriculum: Curriculum
  readonly pairs: readonly WrittenPair[]
  readonly requirements: readonly WrittenRequirement[]
  /** What every diver holds before a target; worked out once, for several rules ask. */
  readonly before: ReturnType<typeof alwaysBefore>
}

/** A (skill, place) as it is written in messages: `101C at 1 m`. */
export const nameOf = ({ skill, place }: Holding): string => `${skill} at ${placeFacts[place].label}`

function listPairs(document: EditionDocument, curriculum: Curriculum): WrittenPair[] {
  return document.skills.flatMap((skill, s) =>
    skill.places.flatMap((at, p) => {
      const pair = curriculum.pairs.get(`${skill.key}@${at.place}`)
      return pair ? [{ pair, name: nameOf(pair.holding), path: pointerTo('skills', s, 'places', p) }] : []
    }),
  )
}

function listRequirements(document: EditionDocument, pairs: readonly WrittenPair[]): WrittenRequirement[] {
  return [
    ...pairs.flatMap(({ pair, name, path }): WrittenRequirement[] => {
      const requirement = pair.at.prerequisite
      if (requirement === null) return []
      return [{ of: 'prerequisite', owner: name, level: pair.level, path: `${path}/prerequisite`, requirement }]
    }),
    ...document.levels.map(({ title, requirement }, level): WrittenRequirement => {
      return {
        of: 'level',
        owner: `level ${title}`,
        level,
        path: pointerTo('levels', level, 'requirement'),
        requirement,
      }
    }),
    ...document.boardMoves.map(({ title, requirement }, index): WrittenRequirement => {
      const path = pointerTo('boardMoves', index, 'requirement')
      return { of: 'board move', owner: `board move ${title}`, level: null, path, requirement }
    }),
  ]
}

/** Lays a document out for the rules. The document is one that `editionSchema` accepts. */
export function subjectOf(document: EditionDocument): Subject {
  // The linter reads a draft, which has no hash yet.
  const curriculum = indexEdition(document, '')
  const pairs = listPairs(document, curriculum)
  return {
    document,
    curriculum,
    pairs,
    requirements: listRequirements(document, pairs),
    before: alwaysBefore(curriculum),
  }
}
