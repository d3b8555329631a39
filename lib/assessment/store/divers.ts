import { v7 as uuidv7 } from 'uuid'
import type { Scope } from '../../access/scope'
import { getEditionInForce } from '../../curriculum/store/editions'
import { asAccount, type Tx } from '../../platform/db'
import type { NewDiver } from '../new-divers'
import { asOfDay, dateOf, dayOf, type EpochDay } from '../time'
import { lockDivers } from './lock'
import { refreshReadiness } from './readiness'

const refresh = async (tx: Tx, scope: Scope, divers: readonly string[]): Promise<void> =>
  refreshReadiness(tx, scope, await getEditionInForce(tx, scope), divers)

export interface Entry {
  readonly club: string
  /** IANA zone of the club. */
  readonly zone: string
  /** Null: no squad yet. */
  readonly squad: string | null
  /** The day since which they are with the club. */
  readonly since: EpochDay
  readonly divers: readonly NewDiver[]
}

/** Enters divers who are new to the programme into a club, and into one of its squads. All or none; answers their ids. */
export function enterDivers(scope: Scope, { club, zone, squad, since, divers }: Entry): Promise<string[]> {
  const from = new Date(asOfDay(since - 1, zone).instant + 1)
  return asAccount(
    scope.account,
    async (tx) => {
      const ids: string[] = []
      for (const diver of divers) {
        const id = uuidv7({ msecs: scope.at })
        const bornOn = diver.born === null ? null : dateOf(diver.born)
        await tx.$executeRaw`SELECT enter_diver(${id}::uuid, ${club}::uuid, ${diver.givenName}, ${diver.familyName},
          ${bornOn}::date, ${diver.twistingSide}, ${diver.hurdleLeg}, ${from}, ${new Date(scope.at)})`
        ids.push(id)
      }
      if (squad) await tx.squadDiver.createMany({ data: ids.map((diverId) => ({ squadId: squad, diverId })) })
      await refresh(tx, scope, ids)
      return ids
    },
    { timeout: 60_000 },
  )
}

/** What is known of a diver beside her record. */
export interface Particulars extends NewDiver {
  readonly id: string
}

/** The particulars of a diver of the scope's clubs, or null: outside them she does not exist. */
export function findParticulars(scope: Scope, diver: string): Promise<Particulars | null> {
  return asAccount(scope.account, async (tx) => {
    const row = await tx.diver.findUnique({ where: { id: diver } })
    const words = await tx.diverWords.findUnique({ where: { diverId: diver } })
    if (!row || !words) return null
    return {
      id: diver,
      givenName: words.givenName ?? '',
      familyName: words.familyName ?? '',
      born: words.bornOn ? dayOf(words.bornOn) : null,
      twistingSide: row.twistingSide as NewDiver['twistingSide'],
      hurdleLeg: row.hurdleLeg as NewDiver['hurdleLeg'],
    }
  })
}

/** Mends a diver's particulars; false when she is not of a club that this account heads. */
export function mendParticulars(scope: Scope, { id, ...diver }: Particulars): Promise<boolean> {
  return asAccount(scope.account, async (tx) => {
    await lockDivers(tx, [id])
    const { count } = await tx.diverWords.updateMany({
      where: { diverId: id, erasedAt: null },
      data: {
        givenName: diver.givenName,
        familyName: diver.familyName,
        bornOn: diver.born === null ? null : dateOf(diver.born),
      },
    })
    if (count === 0) return false
    await tx.diver.updateMany({
      where: { id },
      data: { twistingSide: diver.twistingSide, hurdleLeg: diver.hurdleLeg },
    })
    // Her age is part of what some levels ask, and was all along: nothing that was kept of her holds.
    await tx.readiness.deleteMany({ where: { diverId: id } })
    await refresh(tx, scope, [id])
    return true
  })
}
