import type { ClubRole, ProgrammeRole } from '../../lib/access/actor'
import { commitTo } from '../../lib/assessment/ledger/write-event'
import { makeSalt } from '../../lib/assessment/store/words'
import { insertRow, type Owner } from './rows'

export interface AccountRow {
  readonly id: string
  readonly email: string
  readonly name: string
  readonly initials: string
  readonly passwordHash: string
  readonly createdAt: Date
}

export const insertAccount = (owner: Owner, row: AccountRow): Promise<void> => insertRow(owner, 'Account', { ...row })

export interface MembershipRow {
  readonly id: string
  readonly accountId: string
  readonly programmeId: string
  /** Null for a role in the programme. */
  readonly clubId: string | null
  readonly role: ClubRole | ProgrammeRole
  readonly from: Date
}

export const insertMembership = (owner: Owner, row: MembershipRow): Promise<void> =>
  insertRow(owner, 'Membership', { ...row })

/** Ends every post of an account that has not ended. */
export async function endMemberships(owner: Owner, account: string, to: Date): Promise<void> {
  await owner.query('UPDATE "Membership" SET "to" = $2 WHERE "accountId" = $1 AND "to" IS NULL', [account, to])
}

export interface DiverRow {
  readonly id: string
  readonly programmeId: string
  readonly givenName: string
  readonly familyName: string
  /** Calendar date, `2015-09-30`; null when it is not known. */
  readonly bornOn: string | null
  readonly createdAt: Date
}

/** A diver with the erasable words about her. */
export async function insertDiver(owner: Owner, row: DiverRow): Promise<void> {
  const { id, programmeId, createdAt, ...words } = row
  await insertRow(owner, 'Diver', { id, programmeId, createdAt })
  await insertRow(owner, 'DiverWords', { diverId: id, ...words })
}

export interface DiverMembershipRow {
  readonly id: string
  readonly diverId: string
  readonly clubId: string
  readonly from: Date
}

export const insertDiverMembership = (owner: Owner, row: DiverMembershipRow): Promise<void> =>
  insertRow(owner, 'DiverMembership', { ...row })

export const insertSquadDiver = (owner: Owner, row: { squadId: string; diverId: string }): Promise<void> =>
  insertRow(owner, 'SquadDiver', row)

export interface ConsentRow {
  readonly diverId: string
  readonly clubId: string
  /** Who gave it, e.g. "Her mother". */
  readonly saidBy: string
  readonly recordedBy: string
  readonly recordedAt: Date
}

/** A consent to a record and one to video, as a club has them before a diver is first recorded; `id` makes a fresh id each time. */
export async function insertConsents(owner: Owner, row: ConsentRow, id: () => string): Promise<void> {
  const { saidBy, ...consent } = row
  for (const purpose of ['record', 'video']) {
    const [saidById, salt] = [id(), makeSalt()]
    const { diverId, clubId, recordedBy } = consent
    const commitment = commitTo(saidBy, salt)
    await insertRow(owner, 'Words', {
      ...{ id: saidById, clubId, diverId, writtenBy: recordedBy },
      ...{ text: saidBy, salt, commitment, readers: 'head' },
    })
    await insertRow(owner, 'Consent', { id: id(), ...consent, purpose, given: true, saidById })
  }
}
