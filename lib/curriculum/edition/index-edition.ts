import { parseDive } from '../dives/parse'
import type { BoardMove, Criterion, EditionDocument, Rating, Skill, SkillPlace, Standard } from '../model'
import type { BoardMoveLeaf, Requirement } from '../requirement/model'
import { criteriaAt } from './attach'
import type { AttachedCriterion, Curriculum, Pair, PairKey, PairStandard } from './curriculum'
import { pairKey } from './curriculum'

const keyed = <Item extends { readonly key: string }>(items: readonly Item[]): ReadonlyMap<string, Item> =>
  new Map(items.map((item) => [item.key, item]))

/** The index of a level key, after the edition's map of keys that went; −1 when it does not know the key. */
export function levelIndexOf(document: Pick<EditionDocument, 'levels' | 'levelMap'>, key: string): number {
  const index = document.levels.findIndex((level) => level.key === key)
  if (index >= 0) return index
  const mapped = Object.hasOwn(document.levelMap, key) ? document.levelMap[key] : undefined
  return document.levels.findIndex((level) => level.key === mapped)
}

/** The step function of a criterion laid out over the levels: the step of the highest level reached so far, 0 before the first. */
export function expectsByLevel(document: EditionDocument, criterion: Criterion): Rating[] {
  const steps = criterion.expects.map((step) => ({ from: levelIndexOf(document, step.level), rating: step.rating }))
  return document.levels.map((_, level) => {
    const reached = steps.filter((step) => step.from >= 0 && step.from <= level).sort((a, b) => a.from - b.from)
    return reached.at(-1)?.rating ?? 0
  })
}

/** The family whose board moves a skill needs: a twisting dive needs the move of its direction; a lead-up needs none. */
export function moveFamilyOf(skill: Skill): BoardMove['family'] | null {
  if (skill.dive === null || skill.family === 'safety') return null
  if (skill.family !== 'twisting') return skill.family
  const parsed = parseDive(skill.dive)
  return parsed.ok ? parsed.dive.direction : null
}

/** The board move that a dive needs at a place without its author saying so; null where there is none or the lead-up comes before it. */
export function implicitMove(moves: readonly BoardMove[], skill: Skill, at: SkillPlace): BoardMoveLeaf | null {
  const family = moveFamilyOf(skill)
  if (family === null || at.beforeMove) return null
  const move = moves.find((move) => move.family === family && move.to === at.place)
  return move ? { kind: 'boardMove', family: move.family, to: move.to } : null
}

/** What must hold before a (skill, place) is open: the implicit board move, then what the author wrote; null when nothing. */
export function effectivePrerequisite(moves: readonly BoardMove[], skill: Skill, at: SkillPlace): Requirement | null {
  const move = implicitMove(moves, skill, at)
  if (move === null || at.prerequisite === null) return move ?? at.prerequisite
  return { kind: 'all', of: [move, at.prerequisite] }
}

function standardOf(base: Standard, at: SkillPlace, criteria: readonly AttachedCriterion[]): PairStandard {
  const standard = { ...base, ...at.standard }
  // Counted over all levels: a slack that grew with the level would let a diver succeed high and fail low.
  const asked = criteria.filter((attached) => attached.expects.some((rating) => rating > 0)).length
  return { ...standard, slack: standard.slack ?? Math.ceil(asked / 6) }
}

function indexPair(document: EditionDocument, skill: Skill, at: SkillPlace): Pair {
  const holding = { skill: skill.key, place: at.place }
  const criteria = criteriaAt(document.criteria, skill, at.place).map((criterion) => ({
    criterion,
    expects: expectsByLevel(document, criterion),
  }))
  return {
    key: pairKey(holding),
    holding,
    skill,
    at,
    level: levelIndexOf(document, at.level),
    criteria,
    standard: standardOf(document.standard, at, criteria),
    prerequisite: effectivePrerequisite(document.boardMoves, skill, at),
  }
}

/**
 * Indexes a document for reading: pairs with their criteria, standards and effective prerequisites. `hash` is the
 * SHA-256 of its canonical form. The document is one that `editionSchema` accepts; throws RangeError when a dive
 * number in it is no dive. Keys that lead nowhere are the linter's business: lookups for them answer undefined or −1.
 */
export function indexEdition(document: EditionDocument, hash: string): Curriculum {
  const pairs = new Map<PairKey, Pair>()
  for (const skill of document.skills)
    for (const at of skill.places) {
      const pair = indexPair(document, skill, at)
      pairs.set(pair.key, pair)
    }
  return {
    document,
    hash,
    levels: document.levels,
    levelIndex: (key) => levelIndexOf(document, key),
    skills: keyed(document.skills),
    criteria: keyed(document.criteria),
    faults: keyed(document.faults),
    pairs,
    boardMoves: document.boardMoves,
    boardMove: (family, to) => document.boardMoves.find((move) => move.family === family && move.to === to),
    layOff: document.layOff,
    events: keyed(document.events ?? []),
  }
}
