import { v7 as uuidv7 } from 'uuid'
import { asAccount } from '../../platform/db'
import type { Scope } from '../scope'

export interface CoachScopeRequest {
  readonly account: string
  readonly club: string
  readonly families: readonly string[]
  readonly places: readonly string[]
  /** The last instant, in milliseconds; null without an end. */
  readonly until: number | null
}

/** Sets what a coach may judge in a club from now on; what she judged before stays as it was. */
export async function setCoachScope(scope: Scope, request: CoachScopeRequest): Promise<void> {
  await asAccount(scope.account, (tx) =>
    tx.coachScope.create({
      data: {
        id: uuidv7(),
        accountId: request.account,
        clubId: request.club,
        families: [...request.families],
        places: [...request.places],
        until: request.until === null ? null : new Date(request.until),
        setBy: scope.account,
        setAt: new Date(scope.at),
      },
    }),
  )
}
