import { v7 as uuidv7 } from 'uuid'
import type { Scope } from '../../access/scope'
import { asAccount } from '../../platform/db'
import type { Purpose } from '../consent'
import type { Outcome } from '../outcome'
import { listConsents } from './consents'
import { lockDiver } from './desk'
import { isHeadOf, notFound, refuse } from './post'
import { keepWords } from './words'

export interface ConsentSaid {
  readonly diver: string
  readonly purpose: Purpose
  readonly given: boolean
  /** Who gave or withdrew it; read by the head coaches of the diver's club. */
  readonly saidBy: string
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
    if (!said.saidBy.trim())
      return refuse('no name', `Say who ${said.given ? 'gave' : 'withdrew'} it, and how.`, 'saidBy')
    const latest = (await listConsents(tx, [file.id]))(file.id)[said.purpose]
    if ((latest?.given ?? false) === said.given)
      return refuse('as it is', said.given ? 'It is given already.' : 'There is no consent in force to withdraw.')
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
        saidById: words.id,
        recordedBy: scope.account,
        recordedAt: new Date(at),
      },
    })
    return { ok: true, id }
  })
}
