import { canDecide } from '@/lib/access/can'
import { coachingScopeOf } from '@/lib/access/scope'
import { requireCoach } from '@/lib/access/session'
import { levelName } from '@/lib/assessment/readiness/wording'
import { type Exemplar, readNamed } from '@/lib/assessment/store/exemplars'
import { findMoment, type MomentFile } from '@/lib/assessment/store/moments'
import { guideOf } from '@/lib/curriculum/guide/guide'
import { systemClock } from '@/lib/platform/clock'

interface Choice {
  readonly value: string
  readonly label: string
}

/** For the head coach of the diver's club: what a moment is named as showing, and what it may be named as. */
export interface NamingView {
  readonly moment: string
  /** False: no consent to exemplars is in force. */
  readonly consented: boolean
  /** Where consents are recorded. */
  readonly consentHref: string
  readonly guideHref: string
  readonly named: readonly { readonly id: string; readonly as: string }[]
  readonly shows: readonly { readonly phase: string; readonly choices: readonly Choice[] }[]
  readonly levels: readonly Choice[]
}

const nameOf = ({ shows }: Exemplar, { curriculum }: MomentFile): string =>
  shows.kind === 'fault'
    ? `The fault “${curriculum.faults.get(shows.fault)?.seen ?? shows.fault}”`
    : `“${curriculum.criteria.get(shows.criterion)?.title ?? shows.criterion}” at ${levelName(shows.level, { curriculum })}`

/** Null for whoever does not head the diver's club, and where the edition does not teach what the moment shows. */
export async function loadNaming(moment: string): Promise<NamingView | null> {
  const actor = await requireCoach()
  const scope = coachingScopeOf(actor, systemClock())
  const file = await findMoment(scope, moment)
  const pair = file?.curriculum.pairs.get(file.pair)
  if (!file || !pair || !canDecide(actor, file.diver.club)) return null
  const { curriculum, diver } = file
  const { reach, named } = await readNamed(scope, moment, diver.id)
  return {
    moment,
    consented: reach !== null,
    consentHref: `/desk/divers/${diver.id}/safety`,
    guideHref: `/curriculum/${encodeURIComponent(pair.key)}`,
    named: named.map((one) => ({ id: one.id, as: nameOf(one, file) })),
    shows: guideOf(curriculum, pair).phases.map(({ phase, criteria, faults }) => ({
      phase,
      choices: [
        ...criteria.map(({ criterion }) => ({ value: `criterion:${criterion.key}`, label: criterion.title })),
        ...faults.map(({ key, seen }) => ({ value: `fault:${key}`, label: `fault: ${seen}` })),
      ],
    })),
    levels: curriculum.levels.slice(Math.max(0, pair.level)).map(({ key, title }) => ({ value: key, label: title })),
  }
}
