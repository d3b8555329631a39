import { v7 as uuidv7 } from 'uuid'
import type { Scope } from '../../access/scope'
import { getEditionInForce } from '../../curriculum/store/editions'
import { asAccount, type Tx } from '../../platform/db'
import { type Outcome, refuse } from '../outcome'
import { listWaiting, type WaitingAttempt } from './filmed'
import { lockDivers } from './lock'
import { momentRow } from './moment-row'
import { refreshReadiness } from './readiness'

/** A filmed attempt with its clip; seconds, `end` null plays to the end. */
export interface FilmedLink {
  readonly attempt: string
  readonly link: string
  readonly start: number
  readonly end: number | null
}

const gone = refuse(
  'not waiting',
  'It does not wait for a clip any more: it was linked or dropped meanwhile, or the diver has moved to another club. Nothing was changed; open the page again.',
)

const named = ({ diver }: WaitingAttempt): string => `${diver.givenName} ${diver.familyName}`

/** What waits of some attempts, read again under their divers' locks; null when one of them does not wait any more. */
async function takeWaiting(tx: Tx, scope: Scope, attempts: readonly string[]): Promise<WaitingAttempt[] | null> {
  const before = await listWaiting(tx, scope, attempts)
  await lockDivers(
    tx,
    before.map(({ diver }) => diver.id),
  )
  const waiting = await listWaiting(tx, scope, attempts)
  return waiting.length === new Set(attempts).size ? waiting : null
}

/** The observation in force that a moment is linked to: of the coach who marked the attempt. */
const findHead = (tx: Tx, { club, attempt, coach }: WaitingAttempt) =>
  tx.observationHead.findFirst({ where: { clubId: club, attemptId: attempt, coachId: coach } })

/**
 * Links clips to filmed attempts, all of them or none: each becomes a moment of the view of the coach who marked it, counts
 * from now on, and leaves her observation as it was (decision 23). An attempt is linked once.
 */
export function linkFilmed(scope: Scope, links: readonly FilmedLink[]): Promise<Outcome> {
  return asAccount(scope.account, async (tx) => {
    const waiting = await takeWaiting(
      tx,
      scope,
      links.map(({ attempt }) => attempt),
    )
    if (!waiting || links.length !== waiting.length) return gone
    const stopped = waiting.filter(({ video }) => !video)
    if (stopped.length > 0)
      return refuse(
        'no consent',
        `No consent to video is in force of ${[...new Set(stopped.map(named))].join(', ')}: nothing was linked. Leave them out, or have the head coach record the consent.`,
      )
    const moments: MomentRows = []
    const outcomes: OutcomeRows = []
    for (const one of waiting) {
      const link = links.find(({ attempt }) => attempt === one.attempt)
      const head = await findHead(tx, one)
      if (!link || !head)
        return refuse(
          'not rated',
          `The rating of ${named(one)} has not come in yet: link the clip when the phone has sent it.`,
        )
      const moment = momentRow({ ...link, id: uuidv7({ msecs: scope.at }) })
      moments.push({ ...moment, clubId: one.club, diverId: one.diver.id, observationId: head.observationId })
      outcomes.push({ ...settled(scope, one), outcome: 'linked', momentId: moment.id })
    }
    await tx.moment.createMany({ data: moments })
    await tx.filmedOutcome.createMany({ data: outcomes })
    const divers = [...new Set(waiting.map(({ diver }) => diver.id))]
    await refreshReadiness(tx, scope, await getEditionInForce(tx, scope), divers)
    return { ok: true, id: outcomes[0]?.attemptId ?? '' }
  })
}

type MomentRows = (ReturnType<typeof momentRow> & { clubId: string; diverId: string; observationId: string })[]
type OutcomeRows = (ReturnType<typeof settled> & { outcome: string; momentId: string })[]

const settled = (scope: Scope, { attempt, club, diver, coach }: WaitingAttempt) => ({
  attemptId: attempt,
  clubId: club,
  diverId: diver.id,
  coachId: coach,
  by: scope.account,
  at: new Date(scope.at),
})

/** Takes a filmed attempt off the list: it was not filmed after all, or the clip is gone. */
export function dropFilmed(scope: Scope, attempt: string): Promise<Outcome> {
  return asAccount(scope.account, async (tx) => {
    const [one] = (await takeWaiting(tx, scope, [attempt])) ?? []
    if (!one) return gone
    await tx.filmedOutcome.createMany({ data: [{ ...settled(scope, one), outcome: 'dropped' }] })
    return { ok: true, id: attempt }
  })
}
