import { notFound } from 'next/navigation'
import { type Asked, sayRequirement } from '@/lib/assessment/readiness/say-requirement'
import { pairName } from '@/lib/assessment/readiness/wording'
import { difficultyTenths, formatTenths } from '@/lib/curriculum/dives/difficulty'
import { parseDive } from '@/lib/curriculum/dives/parse'
import { type Pair, type PairKey, pairKey } from '@/lib/curriculum/edition/curriculum'
import { phaseSets } from '@/lib/curriculum/model'
import { loadEdition } from '../loader'

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
  readonly corrections: readonly { readonly kind: string; readonly text: string; readonly href: string | null }[]
}

export interface SkillPage {
  readonly name: string
  readonly dive: string | null
  readonly summary: string
  readonly difficulty: string | null
  readonly signer: string
  readonly restsOn: Asked | null
  readonly phases: readonly {
    readonly phase: string
    readonly criteria: readonly CriterionView[]
    readonly faults: readonly FaultView[]
  }[]
}

function difficultyOf({ skill, holding }: Pair): string | null {
  const parsed = skill.dive ? parseDive(skill.dive) : null
  if (!parsed?.ok || (holding.place !== '1m' && holding.place !== '3m')) return null
  const found = difficultyTenths(parsed.dive, holding.place === '1m' ? 1 : 3)
  return found.ok ? formatTenths(found.tenths) : null
}

/** A skill at a place as it is asked: criteria by phase with their anchors, faults with corrections. */
export async function loadSkill(encoded: string): Promise<SkillPage> {
  const words = await loadEdition()
  const { curriculum } = words
  const pair = curriculum.pairs.get(decodeURIComponent(encoded) as PairKey)
  if (!pair) notFound()
  return {
    name: pairName(pair.key, words),
    dive: pair.skill.dive,
    summary: pair.skill.summary,
    difficulty: difficultyOf(pair),
    signer: pair.at.signer === 'head' ? 'signed by the head coach' : 'signed by any coach of the club',
    restsOn: pair.prerequisite ? sayRequirement(pair.prerequisite, words) : null,
    phases: phaseSets[pair.skill.phaseSet]
      .map((phase) => {
        const attached = pair.criteria.filter(({ criterion }) => criterion.phase === phase)
        const faults = [...new Set(attached.flatMap(({ criterion }) => criterion.faults))]
        return {
          phase,
          criteria: attached.map(({ criterion, expects }): CriterionView => {
            const steps = curriculum.levels.flatMap(({ title }, level) =>
              (expects[level] ?? 0) > 0 && expects[level] !== expects[level - 1]
                ? [`${expects[level]} at ${title}`]
                : [],
            )
            return { ...criterion, expects: steps.join(', ') }
          }),
          faults: faults.flatMap((key): FaultView[] => {
            const fault = curriculum.faults.get(key)
            if (!fault) return []
            const corrections = fault.corrections.map(({ kind, text, drill }) => ({
              kind,
              text,
              href: drill ? `/curriculum/${encodeURIComponent(pairKey(drill))}` : null,
            }))
            return [{ key, seen: fault.seen, causes: fault.causes, corrections }]
          }),
        }
      })
      .filter(({ criteria }) => criteria.length > 0),
  }
}
