import { notFound } from 'next/navigation'
import { type ArcSubject, arcSubject } from '@/lib/assessment/arc-subject'
import { sayRequirement } from '@/lib/assessment/readiness/say-requirement'
import { sayStandard } from '@/lib/assessment/readiness/say-standard'
import { levelName, pairName, type Words } from '@/lib/assessment/readiness/wording'
import { difficultyTenths, formatTenths } from '@/lib/curriculum/dives/difficulty'
import { parseDive } from '@/lib/curriculum/dives/parse'
import type { Curriculum, Pair, PairKey } from '@/lib/curriculum/edition/curriculum'
import { pairKey } from '@/lib/curriculum/edition/curriculum'
import { phaseSets } from '@/lib/curriculum/model'
import { placeFacts } from '@/lib/curriculum/place'
import { familyName } from '@/lib/curriculum/tree/family-graph'
import { listOpened } from '@/lib/curriculum/tree/opens'
import type { TreeKey } from '@/lib/curriculum/tree/target'
import { levelKey, moveKey } from '@/lib/curriculum/tree/target'
import { type AskedView, loadEdition, targetHref, viewAsked } from '../loader'

interface Way {
  readonly href: string
  readonly name: string
}

export interface CriterionView {
  readonly key: string
  readonly title: string
  readonly statement: string
  readonly critical: boolean
  readonly anchors: readonly string[]
  /** "2 at Soundings, 3 at Bearings". */
  readonly expects: string
}

export interface FaultView {
  readonly key: string
  readonly seen: string
  readonly causes: readonly string[]
  readonly corrections: readonly { readonly kind: string; readonly text: string; readonly drill: Way | null }[]
}

export interface SkillPage {
  readonly name: string
  readonly dive: string | null
  readonly summary: string
  readonly level: string
  readonly signer: string
  readonly arc: ArcSubject
  readonly tree: Way
  readonly elsewhere: readonly Way[]
  /** One sentence a height of a springboard; none for a lead-up. */
  readonly difficulty: readonly string[]
  readonly standard: readonly string[]
  readonly restsOn: AskedView | null
  readonly opens: readonly Way[]
  readonly phases: readonly {
    readonly phase: string
    readonly criteria: readonly CriterionView[]
    readonly faults: readonly FaultView[]
  }[]
}

function sayDifficulty({ skill }: Pair): string[] {
  const parsed = skill.dive ? parseDive(skill.dive) : null
  if (!parsed?.ok) return []
  return ([1, 3] as const).map((height) => {
    const found = difficultyTenths(parsed.dive, height)
    return found.ok ? `${formatTenths(found.tenths)} at ${height} m.` : `${found.error.message}.`
  })
}

function toWay(key: TreeKey, words: Pick<Words, 'curriculum'>): Way {
  const { levels, boardMoves, pairs } = words.curriculum
  const step = levels.find((level) => levelKey(level.key) === key) ?? boardMoves.find((move) => moveKey(move) === key)
  const pair = [...pairs.values()].find((one) => one.key === key)
  const number = pair?.skill.dive ? `${pair.skill.dive} ` : ''
  return { href: targetHref(key), name: pair ? `${number}${pairName(pair.key, words)}` : (step?.title ?? key) }
}

function toFaults(curriculum: Curriculum, keys: readonly string[]): FaultView[] {
  return keys.flatMap((key) => {
    const fault = curriculum.faults.get(key)
    if (!fault) return []
    const corrections = fault.corrections.map(({ kind, text, drill }) => ({
      kind,
      text,
      drill: drill ? toWay(pairKey(drill), { curriculum }) : null,
    }))
    return [{ key, seen: fault.seen, causes: fault.causes, corrections }]
  })
}

function toPhases(curriculum: Curriculum, pair: Pair): SkillPage['phases'] {
  return phaseSets[pair.skill.phaseSet]
    .map((phase) => {
      const attached = pair.criteria.filter(({ criterion }) => criterion.phase === phase)
      return {
        phase,
        criteria: attached.map(({ criterion, expects }): CriterionView => {
          const steps = curriculum.levels.flatMap(({ title }, level) =>
            (expects[level] ?? 0) > 0 && expects[level] !== expects[level - 1] ? [`${expects[level]} at ${title}`] : [],
          )
          return { ...criterion, expects: steps.join(', ') }
        }),
        faults: toFaults(curriculum, [...new Set(attached.flatMap(({ criterion }) => criterion.faults))]),
      }
    })
    .filter(({ criteria }) => criteria.length > 0)
}

/** A skill at a place as it is asked: how it stands in the tree, what it is worth, its criteria and faults by phase. */
export async function loadSkill(encoded: string): Promise<SkillPage> {
  const words = await loadEdition()
  const { curriculum } = words
  const pair = curriculum.pairs.get(decodeURIComponent(encoded) as PairKey)
  if (!pair) notFound()
  const { skill, at } = pair
  return {
    name: pairName(pair.key, words),
    dive: skill.dive,
    summary: skill.summary,
    level: levelName(at.level, words),
    signer: at.signer === 'head' ? 'signed by a head coach' : 'signed by any coach of the club',
    arc: arcSubject(curriculum, pair, [], Math.max(0, pair.level)),
    tree: {
      href: `/curriculum/tree/${skill.family}?at=${encodeURIComponent(pair.key)}#tree-${encodeURIComponent(pair.key)}`,
      name: `In the ${familyName(skill.family)} tree`,
    },
    elsewhere: skill.places
      .map(({ place }) => ({ key: pairKey({ skill: skill.key, place }), place }))
      .filter(({ key }) => key !== pair.key)
      .map(({ key, place }) => ({ href: targetHref(key), name: placeFacts[place].label })),
    difficulty: sayDifficulty(pair),
    standard: sayStandard(pair.standard),
    restsOn: pair.prerequisite ? viewAsked(sayRequirement(pair.prerequisite, words)) : null,
    opens: listOpened(curriculum, pair.key).map((key) => toWay(key, words)),
    phases: toPhases(curriculum, pair),
  }
}
