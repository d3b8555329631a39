import { scopeOf } from '@/lib/access/scope'
import { requireActor } from '@/lib/access/session'
import { type Asked, sayRequirement } from '@/lib/assessment/readiness/say-requirement'
import { dayIn } from '@/lib/assessment/time'
import type { Curriculum } from '@/lib/curriculum/edition/curriculum'
import { placeFacts, places } from '@/lib/curriculum/place'
import { readCurriculum } from '@/lib/curriculum/store/read-curriculum'
import { systemClock } from '@/lib/platform/clock'

export interface CurriculumPage {
  readonly title: string
  readonly steps: readonly { readonly title: string; readonly summary: string; readonly asks: Asked }[]
  readonly places: readonly {
    readonly label: string
    readonly skills: readonly {
      readonly href: string
      readonly dive: string | null
      readonly title: string
      readonly level: string
    }[]
  }[]
}

/** The edition in force and today's day in the programme's zone, for whoever is signed in. */
export async function loadEdition(): Promise<{ readonly curriculum: Curriculum; readonly today: number }> {
  const actor = await requireActor()
  const scope = scopeOf(actor, systemClock())
  return { curriculum: await readCurriculum(scope), today: dayIn(scope.at, scope.zone) }
}

/** Levels, board moves and skills of the edition in force. */
export async function loadCurriculum(): Promise<CurriculumPage> {
  const words = await loadEdition()
  const { curriculum } = words
  const pairs = [...curriculum.pairs.values()]
  return {
    title: curriculum.document.title,
    steps: [
      ...curriculum.levels.map(({ title, summary, requirement }) => ({
        title,
        summary,
        asks: sayRequirement(requirement, words),
      })),
      ...curriculum.boardMoves.map(({ title, requirement }) => ({
        title,
        summary: '',
        asks: sayRequirement(requirement, words),
      })),
    ],
    places: places
      .map((place) => ({
        label: placeFacts[place].label,
        skills: pairs
          .filter((pair) => pair.holding.place === place)
          .map((pair) => ({
            href: `/curriculum/${encodeURIComponent(pair.key)}`,
            dive: pair.skill.dive,
            title: pair.skill.title,
            level: curriculum.levels[pair.level]?.title ?? '',
          })),
      }))
      .filter(({ skills }) => skills.length > 0),
  }
}
