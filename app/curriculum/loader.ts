import type { Actor } from '@/lib/access/actor'
import { canPublish } from '@/lib/access/can'
import { scopeOf } from '@/lib/access/scope'
import { requireActor } from '@/lib/access/session'
import { type Asked, sayRequirement } from '@/lib/assessment/readiness/say-requirement'
import { dayName } from '@/lib/assessment/readiness/wording'
import { dayIn } from '@/lib/assessment/time'
import type { Curriculum } from '@/lib/curriculum/edition/curriculum'
import type { SkillFamily } from '@/lib/curriculum/model'
import { placeFacts } from '@/lib/curriculum/place'
import { readEditionInForce } from '@/lib/curriculum/store/editions'
import { readGuideOpening } from '@/lib/curriculum/store/guide-opening'
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
  /** Whether families read the guides, who said so when, and where; `lead`: whether this reader sets it. */
  readonly opening: {
    readonly open: boolean
    readonly listed: boolean
    readonly said: string | null
    readonly href: string
    readonly lead: boolean
  }
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
  return { curriculum: await readEditionInForce(scope), today: dayIn(scope.at, scope.zone) }
}

/** Where a target is read: a pair has a page, levels and board moves stand on the curriculum's. */
export const targetHref = (key: TreeKey): string =>
  key.includes('@') ? `/curriculum/${encodeURIComponent(key)}` : `/curriculum#${encodeURIComponent(key)}`

export function viewAsked({ sentence, why, of, names }: Asked, hrefOf: HrefOf = targetHref): AskedView {
  const [only, more] = names
  return {
    sentence,
    why,
    href: only && !more ? hrefOf(only) : null,
    of: of.map((part) => viewAsked(part, hrefOf)),
  }
}

/** Where a reader finds a target; null where there is no page for this reader. */
export type HrefOf = (key: TreeKey) => string | null

/** The skills of a family, each with its places and the level that teaches it there. */
export function viewFamily(
  { document, pairs, levels }: Curriculum,
  family: SkillFamily,
  hrefOf: HrefOf,
): CurriculumPage['families'][number] {
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
            href: hrefOf(pair.key) ?? '',
            place: placeFacts[pair.holding.place].label,
            level: levels[pair.level]?.title ?? '',
          })),
      })),
  }
}

async function viewOpening(actor: Actor): Promise<CurriculumPage['opening']> {
  const scope = scopeOf(actor, systemClock())
  const opening = await readGuideOpening(scope)
  const open = opening?.open ?? false
  const day = opening ? dayName(dayIn(opening.at, scope.zone), { today: dayIn(scope.at, scope.zone) }) : ''
  return {
    open,
    listed: opening?.listed ?? false,
    said: opening ? `${open ? 'Opened' : 'Closed'} by ${opening.by} on ${day}.` : null,
    href: `/guide/${scope.programme}`,
    lead: canPublish(actor),
  }
}

/** Where families read this skill's guide, while the programme's guides are open to them. */
export async function familiesHref(pair: string): Promise<string | null> {
  const scope = scopeOf(await requireActor(), systemClock())
  const opening = await readGuideOpening(scope)
  return opening?.open ? `/guide/${scope.programme}/${encodeURIComponent(pair)}` : null
}

/** Levels, board moves and skills of the edition in force. */
export async function loadCurriculum(): Promise<CurriculumPage> {
  const actor = await requireActor()
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
    families: listFamilies(curriculum).map((family) => viewFamily(curriculum, family, targetHref)),
    opening: await viewOpening(actor),
  }
}
