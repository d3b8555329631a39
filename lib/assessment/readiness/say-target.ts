import { bindingLeaves } from './explain'
import type { Remaining, TargetFinding } from './finding'
import { counted, listed, sentence } from './grammar'
import { sayBlock } from './say-block'
import { sayReason } from './say-reason'
import { dayName, targetName, type Words } from './wording'

/** A target in a coach's words: the one large sentence, and what it rests on below it. */
export interface SaidTarget {
  readonly headline: string
  readonly lines: readonly string[]
}

/** "two clean attempts and one decision"; null when nothing but a date is missing. */
function distance(remaining: Extract<Remaining, { kind: 'count' }>): string | null {
  const parts: string[] = []
  if (remaining.attempts > 0)
    parts.push(`${remaining.exact ? '' : 'at most '}${counted(remaining.attempts, 'clean attempt')}`)
  if (remaining.decisions > 0) parts.push(counted(remaining.decisions, 'decision'))
  return parts.length > 0 ? listed(parts) : null
}

function away(remaining: Extract<Remaining, { kind: 'count' }>, name: string, words: Words): string {
  const far = distance(remaining)
  const date = remaining.notBefore === null ? null : dayName(remaining.notBefore, words)
  if (far === null) return date === null ? `is not ready for ${name} yet` : `has to wait for ${name} until ${date}`
  const fresh = remaining.newSkills.length
  const learning = fresh === 0 ? '' : `, with ${counted(fresh, 'new skill')} to learn`
  return `is ${far} away from ${name}${learning}${date === null ? '' : `, and not before ${date}`}`
}

function predicate(target: TargetFinding, remaining: Remaining | null, words: Words): string {
  const name = targetName(target.target, words)
  if (target.ready) return `is ready for ${name}`
  if (target.held === 'to review') return `has ${name}, which is to be reviewed`
  if (target.held !== 'no') return `has ${name}${target.held === 'recognised' ? ', as recognised' : ''}`
  if (target.finding.status === 'met' && target.blocks.length > 0) return `meets all that ${name} asks, and has to wait`
  if (remaining === null) return `is not ready for ${name} yet`
  return remaining.kind === 'never' ? `cannot reach ${name} as things stand` : away(remaining, name, words)
}

/**
 * A level or board move in a coach's words: "Mira is two clean attempts away from 3 m with forward dives." Below it
 * what stands against it, then the leaves that it rests on or waits for, then why it cannot be reached, if so.
 */
export function sayTarget(target: TargetFinding, words: Words, remaining: Remaining | null = null): SaidTarget {
  const never = remaining?.kind === 'never' ? remaining.because : []
  return {
    headline: sentence(`${words.diver ?? 'the diver'} ${predicate(target, remaining, words)}`),
    lines: [
      ...new Set([
        ...target.blocks.map((block) => sayBlock(block, words)),
        ...[...bindingLeaves(target.finding), ...never].map((finding) => sayReason(finding, words)),
      ]),
    ],
  }
}
