import { scopeOf } from '@/lib/access/scope'
import { requireActor } from '@/lib/access/session'
import { type Asked, sayRequirement } from '@/lib/assessment/readiness/say-requirement'
import { dayIn } from '@/lib/assessment/time'
import type { Curriculum } from '@/lib/curriculum/edition/curriculum'
import type { SkillFamily } from '@/lib/curriculum/model'
import { placeFacts } from '@/lib/curriculum/place'
import { readCurriculum } from '@/lib/curriculum/store/read-curriculum'
import { familyName, listFamilies } from '@/lib/curriculum/tree/family-graph'
import { levelKey, moveKey, type TreeKey } from '@/lib/curriculum/tree/target'
import { systemClock } from '@/lib/platform/clock'

/** What a requirement asks, each sentence about one thing with the way there. */
export interface AskedView {
  readonly sentence: string
  readonly why: string | null
  readonly href: string | null
  readonly of: readonly AskedView[]
}

export interface CurriculumPage {
  readonly title: string
  readonly steps: readonly {
    readonly key: string
    readonly title: string
    readonly summary: string
    readonly asks: AskedView
  }[]
  readonly families: readonly {
    readonly family: SkillFamily
    readonly label: string
    /** Its tree. */
    readonly href: string
    readonly skills: readonly {
      readonly key: string
      readonly dive: string | null
      readonly title: string
      readonly at: readonly { readonly href: string; readonly place: string; readonly level: string }[]
    }[]
  }[]
}

/** The edition in force and today's day in the programme's zone, for whoever is signed in. */
export async function loadEdition(): Promise<{ readonly curriculum: Curriculum; readonly today: number }> {
  const actor = await requireActor()
  const scope = scopeOf(actor, systemClock())
  return { curriculum: await readCurriculum(scope), today: dayIn(scope.at, scope.zone) }
}

/** Where a target is read: a pair has a page, levels and board moves stand on the curriculum's. */
export const targetHref = (key: TreeKey): string =>
  key.includes('@') ? `/curriculum/${encodeURIComponent(key)}` : `/curriculum#${encodeURIComponent(key)}`

export function viewAsked(
  { sentence, why, of, names }: Asked,
  hrefOf: (key: TreeKey) => string | null = targetHref,
): AskedView {
  const [only, more] = names
  return {
    sentence,
    why,
    href: only && !more ? hrefOf(only) : null,
    of: of.map((part) => viewAsked(part, hrefOf)),
  }
}

function toFamily({ document, pairs, levels }: Curriculum, family: SkillFamily): CurriculumPage['families'][number] {
  return {
    family,
    label: familyName(family),
    href: `/curriculum/tree/${family}`,
    skills: document.skills
      .filter((skill) => skill.family === family)
      .map(({ key, dive, title }) => ({
        key,
        dive,
        title,
        at: [...pairs.values()]
          .filter(({ skill }) => skill.key === key)
          .map((pair) => ({
            href: `/curriculum/${encodeURIComponent(pair.key)}`,
            place: placeFacts[pair.holding.place].label,
            level: levels[pair.level]?.title ?? '',
          })),
      })),
  }
}

/** Levels, board moves and skills of the edition in force. */
export async function loadCurriculum(): Promise<CurriculumPage> {
  const words = await loadEdition()
  const { curriculum } = words
  return {
    title: curriculum.document.title,
    steps: [
      ...curriculum.levels.map(({ key, title, summary, requirement }) => ({
        key: levelKey(key),
        title,
        summary,
        asks: viewAsked(sayRequirement(requirement, words)),
      })),
      ...curriculum.boardMoves.map((move) => ({
        key: moveKey(move),
        title: move.title,
        summary: '',
        asks: viewAsked(sayRequirement(move.requirement, words)),
      })),
    ],
    families: listFamilies(curriculum).map((family) => toFamily(curriculum, family)),
  }
}
