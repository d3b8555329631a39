import type { Scope } from '../../access/scope'
import type { Curriculum } from '../../curriculum/edition/curriculum'
import { getEditionInForce } from '../../curriculum/store/editions'
import { asAccount, type Tx } from '../../platform/db'
import { standDownsOn } from '../block'
import { type Consents, isRecordingStopped, mayKeepVideo, recordingStopped } from '../consent'
import { type DeckSnapshot, deckVersion, type SnapshotDiver, type SnapshotIncident } from '../deck/contract'
import { toWatch } from '../deck/to-watch'
import { careSince, sayCare } from '../growth'
import { openState } from '../open'
import { type Evaluation, evaluationOf } from '../readiness/evaluation'
import { explain } from '../readiness/explain'
import { sentence } from '../readiness/grammar'
import { sayBlock } from '../readiness/say-block'
import type { StandingRow } from '../readiness/standing-row'
import { listTargets, readTarget } from '../readiness/targets'
import type { Words } from '../readiness/wording'
import { asOfInstant, type EpochDay } from '../time'
import { listConsents } from './consents'
import { listGrowth } from './growth'
import { listOpenCalls, listRecent } from './own-observations'
import { type DiverFile, listDiverFiles } from './records'
import { listStandings } from './standings'

/** The level that a diver works towards: the first that she does not hold; with all of them held, the last. */
export function levelTowards(evaluation: Evaluation): string {
  const levels = listTargets(evaluation.curriculum).filter((target) => target.startsWith('level:'))
  const next = levels.find((target) => readTarget(evaluation, target).held === 'no') ?? levels.at(-1) ?? 'level:'
  return next.slice('level:'.length)
}

/** Given names, with as much of the family name as tells two of one club apart. */
function shortNames(files: readonly DiverFile[]): ReadonlyMap<string, string> {
  return new Map(
    files.map((file) => {
      const twins = files.filter((other) => other.givenName === file.givenName && other.id !== file.id)
      return [file.id, twins.length > 0 ? `${file.givenName} ${file.familyName.slice(0, 1)}.` : file.givenName]
    }),
  )
}

interface Beside {
  readonly standings: readonly StandingRow[]
  readonly shortName: string
  readonly consents: Consents
  readonly grown: readonly EpochDay[]
}

function toDiver(curriculum: Curriculum, file: DiverFile, beside: Beside, at: number): SnapshotDiver {
  const { shortName, consents, grown, standings } = beside
  const date = asOfInstant(at, file.zone)
  const evaluation = evaluationOf(curriculum, file.record, date)
  const words: Words = { curriculum, today: date.day, diver: file.givenName }
  const standDown = standDownsOn(evaluation)[0]
  const care = careSince(grown, date.day)
  const level = levelTowards(evaluation)
  return {
    id: file.id,
    club: file.club,
    name: `${file.givenName} ${file.familyName}`,
    shortName,
    level,
    standDown: standDown ? sayBlock(standDown, words) : null,
    care: care === null ? null : sayCare(care, words),
    recordingStopped: isRecordingStopped(consents, at) ? sentence(recordingStopped) : null,
    video: mayKeepVideo(consents),
    pairs: [...curriculum.pairs.keys()].map((pair) => {
      const { state, because } = openState(evaluation, pair)
      const by =
        because === null ? null : 'node' in because ? explain(because, words).sentence : sayBlock(because, words)
      return { pair, state, because: by }
    }),
    watch: toWatch(evaluation, standings, level, words),
  }
}

const knownFor = 7 * 86_400_000

/** Incidents that are open, and those received in the last week: the deck adds its own only where they are not here. */
function toIncidents({ id: diver, record }: DiverFile, at: number): SnapshotIncident[] {
  return record.incidents
    .filter(({ clearedAt, receivedAt }) => clearedAt === null || receivedAt > at - knownFor)
    .map(({ id, pair, kind: what, happenedAt, clearedAt }) => ({
      ...{ id, diver, pair, what, happenedAt },
      cleared: clearedAt !== null,
    }))
}

async function listSquads(tx: Tx, scope: Scope, files: readonly DiverFile[]) {
  const squads = await tx.squad.findMany({
    where: { clubId: { in: [...(scope.clubs ?? [])] } },
    orderBy: { createdAt: 'asc' },
  })
  const rows = await tx.squadDiver.findMany({ where: { squadId: { in: squads.map((squad) => squad.id) } } })
  const order = new Map(files.map((file, index) => [file.id, index]))
  return squads.map((squad) => ({
    id: squad.id,
    club: squad.clubId,
    name: squad.name,
    divers: rows
      .filter((row) => row.squadId === squad.id && order.has(row.diverId))
      .map((row) => row.diverId)
      .sort((a, b) => (order.get(a) ?? 0) - (order.get(b) ?? 0)),
  }))
}

/** Everything that the deck of a coach shows, as of now. `scope` is a coaching scope. */
export function readSnapshot(scope: Scope, coachName: string): Promise<DeckSnapshot> {
  return asAccount(
    scope.account,
    async (tx) => {
      const curriculum = await getEditionInForce(tx, scope)
      const files = (await listDiverFiles(tx, scope)).sort(byName)
      const names = shortNames(files)
      const ids = files.map((file) => file.id)
      const [consents, growth] = [await listConsents(tx, ids), await listGrowth(tx, ids)]
      const standings = new Map((await listStandings(tx, scope)).divers.map(({ id, rows }) => [id, rows]))
      const beside = ({ id, givenName }: DiverFile): Beside => ({
        standings: standings.get(id) ?? [],
        shortName: names.get(id) ?? givenName,
        consents: consents(id),
        grown: growth(id),
      })
      const clubs = await tx.club.findMany({
        where: { id: { in: [...(scope.clubs ?? [])] } },
        orderBy: { name: 'asc' },
      })
      return {
        v: deckVersion,
        takenAt: scope.at,
        coach: { id: scope.account, name: coachName },
        clubs: clubs.map(({ id, name, zone }) => ({ id, name, zone })),
        squads: await listSquads(tx, scope, files),
        divers: files.map((file) => toDiver(curriculum, file, beside(file), scope.at)),
        edition: { hash: curriculum.hash, document: curriculum.document },
        recent: (await listRecent(tx, scope)).filter(({ attempt }) => files.some((file) => file.id === attempt.diver)),
        calls: await listOpenCalls(tx, scope),
        incidents: files.flatMap((file) => toIncidents(file, scope.at)),
      }
    },
    { timeout: 60_000 },
  )
}

const byName = (a: DiverFile, b: DiverFile): number =>
  a.givenName.localeCompare(b.givenName, 'en') || a.familyName.localeCompare(b.familyName, 'en')
