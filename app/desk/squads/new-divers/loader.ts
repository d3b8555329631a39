import { readSquads } from '@/lib/access/store/squads'
import { dayIn, formatDay } from '@/lib/assessment/time'
import { loadHeaded } from '../../people/loader'

export interface NewDiversPage {
  readonly club: string
  readonly clubName: string
  readonly squads: readonly { readonly id: string; readonly name: string }[]
  /** `YYYY-MM-DD` in the club's zone. */
  readonly today: string
}

/** What the form for new divers offers: the club's squads, and today. */
export async function loadNewDivers(asked: string | string[] | undefined): Promise<NewDiversPage> {
  const { scope, club } = await loadHeaded('/desk/squads/new-divers', asked)
  const { squads } = await readSquads(scope, club.club)
  return {
    club: club.club,
    clubName: club.clubName,
    squads: squads.map(({ id, name }) => ({ id, name })),
    today: formatDay(dayIn(scope.at, club.zone)),
  }
}
