import { v7 as uuidv7 } from 'uuid'
import type { Scope } from '../../access/scope'
import { asAccount } from '../../platform/db'
import type { Consents, Purpose, Reach } from '../consent'
import { type Outcome, type Refused, refuse } from '../outcome'
import { listConsents } from './consents'
import { lockDiver, notFound } from './desk'
import { isHeadOf } from './head-coaches'
import { keepWords } from './words'

export interface ConsentSaid {
  readonly diver: string
  readonly purpose: Purpose
  readonly given: boolean
  /** Of a consent to exemplars: how far it reaches. Given again with another reach, that one counts from then on. */
  readonly reach?: Reach | null
  /** Who gave or withdrew it; read by the head coaches of the diver's club. */
  readonly saidBy: string
}

/** Why it is not recorded as it was said; null when it may be. */
function fault({ purpose, given, reach = null, saidBy }: ConsentSaid, stand: Consents): Refused | null {
  if (!saidBy.trim())
    return { code: 'no name', message: `Say who ${given ? 'gave' : 'withdrew'} it, and how.`, field: 'saidBy' }
  if (given && (purpose === 'exemplar') !== (reach !== null))
    return { code: 'no reach', message: 'Say who may see the exemplars.', field: 'reach' }
  if (given && purpose === 'exemplar' && !stand.video?.given)
    return { code: 'no video', message: 'Record the consent to video first: an exemplar is a moment on video.' }
  const latest = stand[purpose]
  if ((latest?.given ?? false) !== given || (given && latest?.reach !== reach)) return null
  return { code: 'as it is', message: given ? 'It is given already.' : 'There is no consent in force to withdraw.' }
}

/**
 * Records that a consent was given or withdrawn, from now on. A head coach records both; any coach of the diver's club who is
 * told of a withdrawal records it, so that it takes effect at once.
 */
export function recordConsent(scope: Scope, said: ConsentSaid): Promise<Outcome> {
  return asAccount(scope.account, async (tx) => {
    const now = await lockDiver(tx, scope, said.diver)
    if (!now) return notFound
    const { file } = now
    if (said.given && !(await isHeadOf(tx, scope, file.club)))
      return refuse('not the head coach', 'The head coach records that a consent was given.')
    const stand = (await listConsents(tx, [file.id]))(file.id)
    const refusal = fault(said, stand)
    if (refusal) return { ok: false, refusal }
    const latest = stand[said.purpose]
    const about = { club: file.club, diver: file.id, writtenBy: scope.account, readers: 'head' } as const
    const words = await keepWords(tx, about, said.saidBy.trim())
    // The latest counts: whatever the clocks say, this one comes after the one it follows.
    const at = Math.max(scope.at, latest ? latest.recordedAt + 1 : 0)
    const id = uuidv7({ msecs: at })
    await tx.consent.create({
      data: {
        id,
        clubId: file.club,
        diverId: file.id,
        purpose: said.purpose,
        given: said.given,
        reach: said.given ? (said.reach ?? null) : null,
        saidById: words.id,
        recordedBy: scope.account,
        recordedAt: new Date(at),
      },
    })
    return { ok: true, id }
  })
}
