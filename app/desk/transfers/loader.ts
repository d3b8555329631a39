import type { Actor } from '@/lib/access/actor'
import { headedClubs } from '@/lib/access/can'
import { coachingScopeOf, type Scope } from '@/lib/access/scope'
import { requireHeadCoach } from '@/lib/access/session'
import { listClubs } from '@/lib/access/store/clubs'
import { readSquads } from '@/lib/access/store/squads'
import { listFormerDivers, listTransfers, type TransferRow } from '@/lib/access/store/transfers'
import { transferStep } from '@/lib/access/transfer'
import { dayName } from '@/lib/assessment/readiness/wording'
import { dayIn } from '@/lib/assessment/time'
import { systemClock } from '@/lib/platform/clock'

interface Named {
  readonly id: string
  readonly name: string
}

export interface TransferView {
  readonly id: string
  readonly day: string
  /** "Mira Oake, from Saltmarsh to Gull Point". */
  readonly sentence: string
  /** Whom the other club may mean; null where that is known. */
  readonly candidates: readonly Named[] | null
  /** A settled one: "agreed on 3 May". */
  readonly outcome: string
}

export interface TransfersPage {
  readonly toAnswer: readonly TransferView[]
  readonly waiting: readonly TransferView[]
  readonly settled: readonly TransferView[]
  readonly former: readonly (Named & { readonly club: string; readonly line: string })[]
  readonly mine: readonly Named[]
  readonly others: readonly Named[]
}

export interface HeadCoach {
  readonly actor: Actor
  readonly scope: Scope
  readonly headed: readonly string[]
}

/** The head coach who asks, with the clubs that she heads. */
export async function loadHeadCoach(): Promise<HeadCoach> {
  const actor = await requireHeadCoach()
  return {
    actor,
    scope: coachingScopeOf(actor, systemClock()),
    headed: headedClubs(actor).map((post) => post.club),
  }
}

const settledShown = 10

/** What waits for this head coach's word, what she waits for, what is settled, and who left without a club. */
export async function loadTransfers(): Promise<TransfersPage> {
  const { scope, headed } = await loadHeadCoach()
  const clubs = await listClubs(scope)
  const rows = await listTransfers(scope)
  const gone = await listFormerDivers(scope)
  const divers = await Promise.all(headed.map((club) => readSquads(scope, club)))
  const nameOf = (club: string) => clubs.find((one) => one.id === club)?.name ?? ''
  const day = (at: number) => dayName(dayIn(at, scope.zone), { today: dayIn(scope.at, scope.zone) })
  const candidatesFor = (row: TransferRow): Named[] => [
    ...(divers[headed.indexOf(row.fromClub)]?.divers ?? []).map(({ id, givenName, familyName }) => ({
      id,
      name: `${givenName} ${familyName}`,
    })),
    ...gone.filter((one) => one.club === row.fromClub).map(({ id, name }) => ({ id, name: `${name} (left)` })),
  ]
  const toView = (row: TransferRow): TransferView => {
    const born = row.bornOn ? `, born ${row.bornOn.toISOString().slice(0, 10)}` : ''
    const settledAt = row.agreedAt ?? row.endedAt
    return {
      id: row.id,
      day: day(row.proposedAt),
      sentence: `${row.name ?? 'A diver'}${born}, from ${nameOf(row.fromClub)} to ${nameOf(row.toClub)}`,
      candidates: row.diver === null ? candidatesFor(row) : null,
      outcome: settledAt === null ? '' : `${row.agreedAt === null ? 'ended' : 'agreed'} on ${day(settledAt)}`,
    }
  }
  const at = (step: ReturnType<typeof transferStep>) =>
    rows.filter((row) => transferStep(row, headed) === step).map(toView)
  return {
    toAnswer: at('to agree'),
    waiting: at('waiting'),
    settled: [...at('complete'), ...at('ended')].slice(0, settledShown),
    former: gone.map(({ id, name, club, left }) => ({ id, name, club, line: `left ${nameOf(club)} on ${day(left)}` })),
    mine: clubs.filter(({ id }) => headed.includes(id)).map(({ id, name }) => ({ id, name })),
    others: clubs.filter(({ id }) => !headed.includes(id)).map(({ id, name }) => ({ id, name })),
  }
}
