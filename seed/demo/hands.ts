import type { Actor } from '../../lib/access/actor'
import { coachingScopeOf, type Scope, scopeOf } from '../../lib/access/scope'
import { findActor } from '../../lib/access/store/actors'
import type { DeckItem } from '../../lib/assessment/deck/contract'
import type { Outcome } from '../../lib/assessment/outcome'
import { type Evaluation, evaluationOf } from '../../lib/assessment/readiness/evaluation'
import { listDiverFiles } from '../../lib/assessment/store/records'
import { syncDeck } from '../../lib/assessment/store/sync/sync'
import { asOfInstant } from '../../lib/assessment/time'
import { getEditionInForce } from '../../lib/curriculum/store/editions'
import { asAccount } from '../../lib/platform/db'
import { coast } from './bootstrap'

/** People of the demo at work: each acts through her own sign-in's scope, at a simulated instant. */

const actors = new Map<string, Actor>()

async function getActor(key: string, at: number): Promise<Actor> {
  const account = coast.account(key)
  // The session is not looked at below the actions.
  const actor = actors.get(account) ?? (await findActor(account, account, at))
  if (!actor) throw new Error(`${key} has no role in the demo on ${new Date(at).toISOString()}`)
  actors.set(account, actor)
  return actor
}

// While the demo is being told its clock is not set yet: the system's time is the simulated one.
export const coachScope = async (key: string, at: number): Promise<Scope> =>
  coachingScopeOf(await getActor(key, at), at)
export const officeScope = async (key: string, at: number): Promise<Scope> => scopeOf(await getActor(key, at), at)

/** How divers stand, by id. */
export type Standing = ReadonlyMap<string, Evaluation>

export function getStanding(standing: Standing, diver: { readonly id: string }): Evaluation {
  const evaluation = standing.get(diver.id)
  if (!evaluation) throw new Error(`no diver ${diver.id} in this coach's clubs`)
  return evaluation
}

/** How some divers stand at an instant, as the coach's own screens would show it. */
export async function lookAt(coach: string, divers: readonly string[], at: number): Promise<Standing> {
  const scope = await coachScope(coach, at)
  return asAccount(scope.account, async (tx) => {
    const curriculum = await getEditionInForce(tx, scope)
    const files = await listDiverFiles(tx, scope, divers)
    return new Map(
      files.map((file) => [file.id, evaluationOf(curriculum, file.record, asOfInstant(at, file.zone))] as const),
    )
  })
}

/** More at once than a deck sends over the air: what a season costs is reading the divers, once a batch. */
const atOnce = 400

/** Packs what belongs together into few batches; a pack that is too large by itself is cut. */
function batchesOf(packs: readonly (readonly DeckItem[])[]): DeckItem[][] {
  const batches: DeckItem[][] = []
  for (const pack of packs)
    for (let from = 0; from < pack.length; from += atOnce) {
      const part = pack.slice(from, from + atOnce)
      const last = batches.at(-1)
      if (last && last.length + part.length <= atOnce) last.push(...part)
      else batches.push([...part])
    }
  return batches
}

/**
 * Sends what a deck holds, diver by diver. Throws Error when an item is not accepted: the demo tells nothing that the
 * rules refuse.
 */
export async function send(coach: string, at: number, packs: readonly (readonly DeckItem[])[]): Promise<void> {
  for (const batch of batchesOf(packs)) {
    const answers = await syncDeck(await coachScope(coach, at), at, batch, 'when read')
    const refused = answers.find((answer) => answer.result !== 'accepted')
    if (refused)
      throw new Error(`${coach}'s deck on ${new Date(at).toISOString()}: ${refused.result}: ${refused.message ?? ''}`)
  }
}

/** Throws Error when what someone did was refused. */
export function require(what: string, outcome: Outcome): void {
  if (!outcome.ok) throw new Error(`${what}: ${outcome.refusal.message}`)
}
