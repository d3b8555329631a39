import { notFound } from 'next/navigation'
import { headedClubs } from '@/lib/access/can'
import { coachingScopeOf, type Scope } from '@/lib/access/scope'
import { requireHeadCoach } from '@/lib/access/session'
import { findParticulars, type Particulars } from '@/lib/assessment/store/divers'
import { readDiver } from '@/lib/assessment/store/reads'
import { formatDay } from '@/lib/assessment/time'
import { systemClock } from '@/lib/platform/clock'

export interface HeadedDiver {
  readonly scope: Scope
  readonly id: string
  readonly name: string
  readonly club: string
  readonly clubName: string
  readonly zone: string
}

/** A diver of a club that the actor heads; any other does not exist here. */
export async function loadHeadedDiver(diver: string): Promise<HeadedDiver> {
  const actor = await requireHeadCoach()
  const scope = coachingScopeOf(actor, systemClock())
  const file = /^[0-9a-f-]{36}$/.test(diver) ? (await readDiver(scope, diver))?.file : null
  if (!file || !headedClubs(actor).some((post) => post.club === file.club)) notFound()
  const { id, givenName, familyName, club, clubName, zone } = file
  return { scope, id, name: `${givenName} ${familyName}`, club, clubName, zone }
}

export interface ParticularsPage extends Omit<Particulars, 'born'> {
  readonly name: string
  readonly clubName: string
  /** `YYYY-MM-DD`, or empty when it is not known. */
  readonly born: string
}

/** What is known of a diver beside her record, for her head coach. */
export async function loadParticulars(diver: string): Promise<ParticularsPage> {
  const { scope, name, clubName } = await loadHeadedDiver(diver)
  const found = await findParticulars(scope, diver)
  if (!found) notFound()
  return { ...found, name, clubName, born: found.born === null ? '' : formatDay(found.born) }
}
