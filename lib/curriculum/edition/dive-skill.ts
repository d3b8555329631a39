import { facetsOf } from '../dives/facets'
import type { Dive } from '../dives/model'
import type { Approach, PhaseSet, SkillFamily, SkillPlace } from '../model'
import { type Place, placeFacts } from '../place'

/** The approach of a dive unless its author says otherwise: it runs facing out, stands facing the board. Either may be stood. */
export function usualApproach(dive: Dive): Approach {
  if (dive.family === 'armstand') return 'armstand'
  return facetsOf(dive).facing === 'out' ? 'running' : 'standing'
}

/** The phases in which a dive is watched; null for an armstand, which has no set of its own. */
export function phaseSetOf(dive: Dive, approach: Approach): PhaseSet | null {
  if (approach === 'armstand') return null
  if (dive.halfTwists > 0) return approach === 'running' ? 'twister' : 'standing twister'
  return facetsOf(dive).enters === 'feet-first' ? `${approach} feet-first` : approach
}

const headSigns: readonly SkillFamily[] = ['reverse', 'inward', 'twisting']

/** Who may sign unless the author says otherwise: a head coach for reverse, inward and twisting, and from 3 m up. */
export const usualSigner = (family: SkillFamily, place: Place): SkillPlace['signer'] =>
  headSigns.includes(family) || (placeFacts[place].height ?? 0) >= 3 ? 'head' : 'coach'
