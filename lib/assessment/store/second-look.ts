import { v7 as uuidv7 } from 'uuid'
import type { Moment } from '../../../generated/prisma/client'
import type { Scope } from '../../access/scope'
import { type Curriculum, type Pair, pairKey } from '../../curriculum/edition/curriculum'
import type { Rating } from '../../curriculum/model'
import type { Place } from '../../curriculum/place'
import { getEditionInForce } from '../../curriculum/store/editions'
import { asAccount, type Tx } from '../../platform/db'
import { programmeInstant } from '../device-clock'
import { momentUrl } from '../moment'
import type { Outcome } from '../outcome'
import { evaluationOf } from '../readiness/evaluation'
import { wantedLooks } from '../second-look'
import { asOfInstant, dayIn, type EpochDay } from '../time'
import { listCopied } from './copies'
import { listGrantedLooks } from './looks'
import { listDiverFiles } from './records'
import { syncDeck } from './sync/sync'

/** An attempt to look at, as a blind second coach sees it: whose, what, when, and the moment. Never what others rated. */
export interface Look {
  readonly attempt: string
  readonly givenName: string
  readonly pair: Pair
  /** Level index that the attempt is judged at. */
  readonly level: number
  readonly day: EpochDay
  readonly moments: readonly string[]
  readonly how: 'granted' | 'of the club'
}

export interface Looks {
  readonly curriculum: Curriculum
  readonly looks: readonly Look[]
}

interface Found {
  readonly attempt: string
  readonly givenName: string
  readonly how: Look['how']
}

const linkOf = ({ link, startMs, endMs }: Pick<Moment, 'link' | 'startMs' | 'endMs'>): string[] =>
  link === null ? [] : [momentUrl(link, { start: startMs / 1000, end: endMs === null ? null : endMs / 1000 })]

/** Attempts of the coach's clubs with a moment, seen by one other coach, lately: whose pairs are then asked for a second one. */
async function listOwn(tx: Tx, scope: Scope, curriculum: Curriculum): Promise<Found[]> {
  const rows = await tx.$queryRaw<{ diverId: string }[]>`
    SELECT DISTINCT a."diverId" FROM "Attempt" a
    JOIN "Observation" o ON o."clubId" = a."clubId" AND o."attemptId" = a."id"
    JOIN "Moment" m ON m."observationId" = o."id"
    WHERE a."called" AND o."coachId" <> ${scope.account}::uuid`
  const divers = rows.map(({ diverId }) => diverId)
  const files = divers.length > 0 ? await listDiverFiles(tx, scope, divers) : []
  return files.flatMap((file) => {
    const evaluation = evaluationOf(curriculum, file.record, asOfInstant(scope.at, file.zone))
    return [...curriculum.pairs.values()].flatMap((pair) => {
      const history = evaluation.history(pair.key)
      const wanted = history ? wantedLooks(pair, history, scope.account) : []
      return wanted.map(({ id }) => ({ attempt: id, givenName: file.givenName, how: 'of the club' as const }))
    })
  })
}

async function toLooks(tx: Tx, scope: Scope, curriculum: Curriculum, found: readonly Found[]): Promise<Look[]> {
  const ids = found.map(({ attempt }) => attempt)
  const attempts = await tx.attempt.findMany({ where: { id: { in: ids } } })
  const rated = await tx.observation.findMany({ where: { attemptId: { in: ids }, coachId: scope.account } })
  const seen = new Set(rated.map(({ attemptId }) => attemptId))
  const granted = await listGrantedLooks(tx)
  const momentIds = granted.flatMap(({ moments }) => moments)
  const lent = await tx.moment.findMany({ where: { id: { in: momentIds } } })
  const own = (await listCopied(tx, { attemptId: { in: ids } })).filter(({ shown }) => shown)
  const zones = new Map((await tx.club.findMany({ select: { id: true, zone: true } })).map((row) => [row.id, row.zone]))
  return found.flatMap((one): Look[] => {
    const row = attempts.find(({ id }) => id === one.attempt)
    const pair = row && curriculum.pairs.get(pairKey({ skill: row.skill, place: row.place as Place }))
    if (!row || !pair || seen.has(row.id)) return []
    const its = granted.find(({ attempt }) => attempt === row.id)?.moments ?? []
    const films = [...lent.filter(({ id }) => its.includes(id)), ...own.filter(({ view }) => view.attempt === row.id)]
    const links = films.flatMap(linkOf)
    const attemptedAt = programmeInstant(row.attemptedAt.getTime(), Number(row.offsetMs))
    return links.length === 0
      ? []
      : [
          {
            ...one,
            pair,
            level: Math.max(pair.level, curriculum.levelIndex(row.atLevel)),
            day: dayIn(attemptedAt, zones.get(row.clubId) ?? scope.zone),
            moments: [...new Set(links)],
          },
        ]
  })
}

/** What a coach may look at on video: granted by other clubs, and wanted in her own. `scope` is a coaching scope. */
export function readLooks(scope: Scope): Promise<Looks> {
  return asAccount(scope.account, async (tx) => {
    const curriculum = await getEditionInForce(tx, scope)
    const granted = (await listGrantedLooks(tx)).map((one): Found => ({ ...one, how: 'granted' }))
    const found = [...granted, ...(await listOwn(tx, scope, curriculum))]
    return { curriculum, looks: await toLooks(tx, scope, curriculum, found) }
  })
}

/** What a second coach saw of an attempt on video. */
export interface LookRating {
  readonly attempt: string
  readonly ratings: Readonly<Record<string, Rating>>
  readonly restAsExpected: boolean
  readonly faults: readonly string[]
}

/** Keeps it by the rule of the deck, as an observation on video under the edition in force. */
export async function rateLook(scope: Scope, rating: LookRating): Promise<Outcome> {
  const { curriculum, looks } = await readLooks(scope)
  if (!looks.some(({ attempt }) => attempt === rating.attempt))
    return {
      ok: false,
      refusal: { code: 'not found', message: 'It is not there to be looked at any more. Nothing was kept.' },
    }
  const id = uuidv7({ msecs: scope.at })
  const item = {
    kind: 'observation',
    id,
    ...rating,
    edition: curriculum.hash,
    observedOn: 'video',
    observedAt: scope.at,
    note: null,
    moments: [],
    supersedes: null,
  }
  const [answer] = await syncDeck(scope, scope.at, [item])
  if (answer?.result === 'refused')
    return { ok: false, refusal: { code: answer.code ?? 'refused', message: answer.message ?? 'It was not kept.' } }
  return { ok: true, id }
}
