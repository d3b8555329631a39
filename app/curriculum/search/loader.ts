import { pairName, placePhrase } from '@/lib/assessment/readiness/wording'
import type { Curriculum, Pair } from '@/lib/curriculum/edition/curriculum'
import { placeFacts } from '@/lib/curriculum/place'
import { type Found, type Piece, searchCurriculum } from '@/lib/curriculum/search/search'
import { loadEdition, targetHref } from '../loader'

interface Way {
  readonly href: string
  readonly name: string
}

export interface FoundView {
  readonly key: string
  readonly dive: string | null
  readonly title: string
  readonly phrase: readonly Piece[]
  readonly ways: readonly Way[]
  /** Skills beyond those that are linked. */
  readonly more: number
}

export interface SearchPage {
  readonly query: string
  readonly total: number
  readonly skills: readonly FoundView[]
  readonly criteria: readonly FoundView[]
  readonly faults: readonly FoundView[]
}

const shown = 20
const linked = 3

const pairHref = ({ key }: Pair): string => targetHref(key)

function toSkill({ key, phrase }: Found, { pairs, skills }: Curriculum): FoundView {
  const ways = [...pairs.values()]
    .filter(({ skill }) => skill.key === key)
    .map((pair) => ({ href: pairHref(pair), name: placeFacts[pair.holding.place].label }))
  return { key, dive: skills.get(key)?.dive ?? null, title: skills.get(key)?.title ?? key, phrase, ways, more: 0 }
}

/** A criterion or fault, and the pages on which it is read. */
function toPart({ key, phrase }: Found, title: string, curriculum: Curriculum, pairs: readonly Pair[]): FoundView {
  return {
    key,
    dive: null,
    title,
    phrase,
    ways: pairs.slice(0, linked).map((pair) => ({
      href: `${pairHref(pair)}#${key}`,
      name: pair.skill.dive
        ? `${pair.skill.dive} ${placePhrase[pair.holding.place]}`
        : pairName(pair.key, { curriculum }),
    })),
    more: Math.max(0, pairs.length - linked),
  }
}

function pairsWith(curriculum: Curriculum, has: (criterion: Pair['criteria'][number]['criterion']) => boolean): Pair[] {
  return [...curriculum.pairs.values()].filter(({ criteria }) => criteria.some(({ criterion }) => has(criterion)))
}

/** What the curriculum answers to a query, each with the phrase that was found and links to where it is read. */
export async function loadSearch(query: string): Promise<SearchPage> {
  const { curriculum } = await loadEdition()
  const found = searchCurriculum(curriculum, query)
  const of = (kind: Found['kind']): Found[] => found.filter((one) => one.kind === kind).slice(0, shown)
  return {
    query,
    total: found.length,
    skills: of('skill').map((one) => toSkill(one, curriculum)),
    criteria: of('criterion').map((one) =>
      toPart(
        one,
        curriculum.criteria.get(one.key)?.title ?? one.key,
        curriculum,
        pairsWith(curriculum, ({ key }) => key === one.key),
      ),
    ),
    faults: of('fault').map((one) =>
      toPart(
        one,
        curriculum.faults.get(one.key)?.seen ?? one.key,
        curriculum,
        pairsWith(curriculum, ({ faults }) => faults.includes(one.key)),
      ),
    ),
  }
}
