import { v7 as uuidv7 } from 'uuid'
import type { Scope } from '../../access/scope'
import { asAccount } from '../../platform/db'
import { type Outcome, refuse } from '../outcome'
import { lockDiver, notFound } from './desk'
import { isHeadOf } from './head-coaches'
import { appendLedger } from './ledger'
import { refreshReadiness } from './readiness'
import { keepWords } from './words'

export interface RevokeRequest {
  readonly kind: 'sign-off' | 'recognition'
  /** Id of the sign-off or recognition. */
  readonly subject: string
  readonly reason: string
}

/** Takes a sign-off or a recognition back, with a reason: it earns no credit from now on. For the diver's head coach. */
export function revoke(scope: Scope, { kind, subject, reason }: RevokeRequest): Promise<Outcome> {
  return asAccount(scope.account, async (tx) => {
    const about = { where: { id: subject }, select: { diverId: true } }
    const row = kind === 'sign-off' ? await tx.signOff.findUnique(about) : await tx.recognition.findUnique(about)
    const now = row ? await lockDiver(tx, scope, row.diverId) : null
    if (!now) return notFound
    if (!reason.trim()) return refuse('no reason', 'Say in writing why you take it back.', 'reason')
    const { file, curriculum } = now
    if (!(await isHeadOf(tx, scope, file.club)))
      return refuse('not the head coach', `Only the head coach takes a ${kind} back.`)
    if ((await tx.revocation.count({ where: { subjectId: subject } })) > 0)
      return refuse('revoked before', 'It was taken back before.')
    const words = await keepWords(tx, { club: file.club, diver: file.id, writtenBy: scope.account }, reason.trim())
    const id = uuidv7({ msecs: scope.at })
    const common = { diver: file.id, club: file.club, by: scope.account }
    const ledgerSeq = await appendLedger(tx, scope, {
      kind: 'revoked',
      revocation: id,
      subject,
      subjectKind: kind,
      ...common,
      reason: words.commitment,
    })
    await tx.revocation.create({
      data: {
        id,
        clubId: file.club,
        diverId: file.id,
        kind,
        subjectId: subject,
        by: scope.account,
        at: new Date(scope.at),
        reasonId: words.id,
        ledgerSeq,
      },
    })
    await refreshReadiness(tx, scope, curriculum, [file.id])
    return { ok: true, id }
  })
}
