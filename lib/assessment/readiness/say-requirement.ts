import { pairKey } from '../../curriculum/edition/curriculum'
import {
  type AgeLeaf,
  type Requirement,
  type RequirementReader,
  readRequirement,
  type VenueFeature,
} from '../../curriculum/requirement/model'
import { dependsOn } from '../../curriculum/tree/cycles'
import type { TreeKey } from '../../curriculum/tree/target'
import { counted, countWord, listed, midSentence, sentence } from './grammar'
import { eventName } from './say-dive-list'
import { criterionName, levelName, pairName, placeName, stepName, type Words } from './wording'

/** What a requirement asks: one sentence a node, the author's reason beside it, what a branch joins below it. */
export interface Asked {
  readonly sentence: string
  readonly why: string | null
  readonly of: readonly Asked[]
  /** Of a leaf: the pairs, the level or the board move that it speaks of. */
  readonly names: readonly TreeKey[]
}

type Names = Pick<Words, 'curriculum'>

/** "at least 10 is asked", "from 10 to 14 is asked", "at most 14 at the end of the year is asked". */
export function sayAgeAsked({ min, max, on }: AgeLeaf): string {
  const when = on === 'year-end' ? ' at the end of the year' : ''
  if (min !== undefined && max !== undefined) return `from ${min} to ${max}${when} is asked`
  if (min !== undefined) return `at least ${min}${when} is asked`
  return max === undefined ? 'any age will do' : `at most ${max}${when} is asked`
}

const features: Readonly<Record<VenueFeature, string>> = { 'board-3m': 'a 3 m board' }

/** "a 3 m board". */
export const sayFeature = (feature: VenueFeature): string => features[feature]

const says: RequirementReader<string, Names> = {
  all: ({ of }) => (of.length === 0 ? 'nothing is asked' : 'all of these are asked'),
  any: ({ of }) => (of.length === 0 ? 'nobody can meet this, since it offers no way' : 'one of these is asked'),
  atLeast: ({ n }) => `at least ${countWord(n)} of these ${n === 1 ? 'is' : 'are'} asked`,
  signOff: (node, names) => {
    const pair = names.curriculum.pairs.get(pairKey(node))
    const level = node.atLevel ?? pair?.at.level
    const at = level === undefined ? '' : ` at ${levelName(level, names)} or above`
    return `${pairName(pairKey(node), names)} is signed${at}`
  },
  criterion: (node, names) => {
    const where = listed(
      node.at.map((at) => midSentence(pairName(pairKey(at), names))),
      'or',
    )
    const times = `${countWord(node.times)} of the last ${counted(node.of, 'called attempt')}`
    return `${criterionName(node.criterion, names)} in ${where} reaches ${node.rating} in ${times} within ${counted(node.withinDays, 'day')}`
  },
  level: ({ level }, names) => `${levelName(level, names)} is approved`,
  boardMove: ({ family, to }, names) => `${stepName(`move:${family}:${to}`, names)} is approved`,
  age: (node) => `age: ${sayAgeAsked(node)}`,
  diveList: ({ event }, names) => {
    const place = names.curriculum.events.get(event)?.place
    return `a list for ${eventName(event, names)} is legal with what is held${place ? ` ${placeName(place)}` : ''}`
  },
  venue: ({ feature }) => `the club has ${sayFeature(feature)}`,
}

/** What is asked, for pages that are read: a tree of sentences. */
export function sayRequirement(requirement: Requirement, names: Names): Asked {
  const branches = 'of' in requirement && typeof requirement.of !== 'number'
  return {
    sentence: sentence(readRequirement(says, requirement, names)),
    why: requirement.reason === undefined ? null : sentence(requirement.reason),
    of: branches ? requirement.of.map((part) => sayRequirement(part, names)) : [],
    names: branches ? [] : dependsOn(requirement),
  }
}
