import { v7 as uuidv7 } from 'uuid'
import type { Scope } from '../../access/scope'
import { type PairKey, pairKey } from '../../curriculum/edition/curriculum'
import type { Place } from '../../curriculum/place'
import { asAccount, beforeSignIn, type Tx } from '../../platform/db'
import { exemplarReach } from '../consent'
import { exemplarRefusal, type Shows } from '../exemplar'
import { type Outcome, refuse } from '../outcome'
import { listConsents } from './consents'
import { listCopies } from './copies'
import { lockDiver, notFound } from './desk'
import { isHeadOf } from './head-coaches'

/** A moment that is shown as an example: never whose it is. */
export interface Exemplar {
  readonly id: string
  /** The moment's own page, for coaches of the diver's club; null for everybody else. */
  readonly moment: string | null
  /** What it is a moment of. */
  readonly pair: PairKey
  readonly shows: Shows
  readonly link: string
  /** Seconds. */
  readonly start: number
  readonly end: number | null
}

interface Row {
  readonly id: string
  readonly momentId: string | null
  readonly skill: string
  readonly place: string
  readonly criterion: string | null
  readonly level: string | null
  readonly fault: string | null
  readonly link: string
  readonly startMs: number
  readonly endMs: number | null
}

const toExemplar = (row: Row): Exemplar => ({
  id: row.id,
  moment: row.momentId,
  pair: pairKey({ skill: row.skill, place: row.place as Place }),
  shows:
    row.criterion !== null && row.level !== null
      ? { kind: 'criterion', criterion: row.criterion, level: row.level }
      : { kind: 'fault', fault: row.fault ?? '' },
  link: row.link,
  start: row.startMs / 1000,
  end: row.endMs === null ? null : row.endMs / 1000,
})

const listShown = async (tx: Tx, besides: string | null): Promise<Exemplar[]> =>
  (await tx.$queryRaw<Row[]>`SELECT * FROM shown_exemplars(${besides}::uuid) ORDER BY "id"`).map(toExemplar)

/**
 * The exemplars that this account may see today. `besides`: an attempt that is about to be rated blind; its own moments would
 * tell what others saw in it.
 */
export const readExemplars = (scope: Scope, besides: string | null = null): Promise<Exemplar[]> =>
  asAccount(scope.account, (tx) => listShown(tx, besides))

/** Those that anybody may see, in a programme whose guides are open. */
export const readOpenExemplars = (programme: string): Promise<Exemplar[]> =>
  beforeSignIn(async (tx) =>
    (await tx.$queryRaw<Row[]>`SELECT * FROM open_exemplars(${programme}::uuid) ORDER BY "id"`).map(toExemplar),
  )

/** What a moment is named as, under whichever id a correction left it. */
async function listNamed(tx: Tx, moment: string): Promise<Exemplar[]> {
  const copies = await listCopies(tx, moment)
  return (await listShown(tx, null)).filter((one) => one.moment !== null && copies.includes(one.moment))
}

/** What a head coach needs on a moment's page: whether the consent allows exemplars, and what it is named as. */
export function readNamed(scope: Scope, moment: string, diver: string) {
  return asAccount(scope.account, async (tx) => ({
    reach: exemplarReach((await listConsents(tx, [diver]))(diver)),
    named: await listNamed(tx, moment),
  }))
}

/** Names a moment as an exemplar. For the head coach of the diver's club; `id` where the story of the demo needs its own. */
export function nameExemplar(
  scope: Scope,
  request: { readonly moment: string; readonly shows: Shows },
  id: string = uuidv7({ msecs: scope.at }),
): Promise<Outcome> {
  return asAccount(scope.account, async (tx) => {
    const moment = await tx.moment.findFirst({ where: { id: request.moment } })
    const seen = moment && (await tx.observation.findFirst({ where: { id: moment.observationId } }))
    const now = moment && (await lockDiver(tx, scope, moment.diverId))
    const fact = now?.evaluation.record.attempts.find((one) => one.id === seen?.attemptId)
    const pair = fact && now?.curriculum.pairs.get(fact.pair)
    if (!moment?.link || !now || !fact || !pair) return notFound
    const { file, curriculum } = now
    if (!(await isHeadOf(tx, scope, file.club)))
      return refuse('not the head coach', 'The diver’s head coach names and withdraws exemplars.')
    const consents = (await listConsents(tx, [file.id]))(file.id)
    const named = await listNamed(tx, moment.id)
    const { shows } = request
    const subject = { curriculum, pair, shows, reach: exemplarReach(consents), named: named.map((one) => one.shows) }
    const refusal = exemplarRefusal(subject)
    if (refusal) return { ok: false, refusal }
    await tx.exemplar.create({
      data: {
        id,
        clubId: file.club,
        diverId: file.id,
        momentId: moment.id,
        attemptId: fact.id,
        skill: pair.holding.skill,
        place: pair.holding.place,
        criterion: shows.kind === 'criterion' ? shows.criterion : null,
        level: shows.kind === 'criterion' ? shows.level : null,
        fault: shows.kind === 'fault' ? shows.fault : null,
        edition: curriculum.hash,
        by: scope.account,
        // A withdrawal ends what was named up to it: this one comes after the consents that it rests on.
        at: new Date(Math.max(scope.at, consents.exemplar?.recordedAt ?? 0, consents.video?.recordedAt ?? 0)),
      },
    })
    return { ok: true, id }
  })
}

/** Takes an exemplar away, everywhere and at once. For the head coach of the diver's club. */
export function withdrawExemplar(scope: Scope, exemplar: string): Promise<Outcome> {
  return asAccount(scope.account, async (tx) => {
    const row = await tx.exemplar.findFirst({ where: { id: exemplar } })
    const now = row && (await lockDiver(tx, scope, row.diverId))
    if (!row || !now)
      return refuse('not found', 'No exemplar is found there. It may have been withdrawn with its consent.')
    if (!(await isHeadOf(tx, scope, now.file.club)))
      return refuse('not the head coach', 'The diver’s head coach names and withdraws exemplars.')
    if ((await tx.exemplarWithdrawal.count({ where: { exemplarId: row.id } })) > 0)
      return refuse('withdrawn before', 'It is withdrawn already.')
    const id = uuidv7({ msecs: scope.at })
    const { club: clubId, id: diverId } = now.file
    await tx.exemplarWithdrawal.create({
      data: { id, clubId, diverId, exemplarId: row.id, by: scope.account, at: new Date(scope.at) },
    })
    return { ok: true, id }
  })
}
