import { v7 as uuidv7 } from 'uuid'
import type { Scope } from '../../access/scope'
import { asAccount, beforeSignIn } from '../../platform/db'
import { findOpenEdition } from './editions'

/** How the programme's guides stand to families: open or not, whether search engines may list them, set by whom and when. */
export interface GuideOpening {
  readonly open: boolean
  readonly listed: boolean
  readonly by: string
  readonly at: number
}

/** What the lead said last; null when nothing was ever said, which is closed. */
export function readGuideOpening(scope: Scope): Promise<GuideOpening | null> {
  return asAccount(scope.account, async (tx) => {
    const row = await tx.guideOpening.findFirst({
      where: { programmeId: scope.programme },
      orderBy: [{ at: 'desc' }, { id: 'desc' }],
    })
    if (!row) return null
    const by = await tx.account.findUnique({ where: { id: row.by }, select: { name: true } })
    return { open: row.open, listed: row.listed, by: by?.name ?? 'the programme lead', at: row.at.getTime() }
  })
}

/** Opens the guides to families, or closes them; `listed` only while they are open. For the lead. */
export function setGuideOpening(scope: Scope, { open, listed }: Pick<GuideOpening, 'open' | 'listed'>): Promise<void> {
  return asAccount(scope.account, async (tx) => {
    const last = await tx.guideOpening.aggregate({ where: { programmeId: scope.programme }, _max: { at: true } })
    // The latest counts: whatever the clocks say, this one comes after the one it follows.
    const at = Math.max(scope.at, (last._max.at?.getTime() ?? 0) + 1)
    await tx.guideOpening.create({
      data: {
        id: uuidv7({ msecs: at }),
        programmeId: scope.programme,
        open,
        listed: open && listed,
        by: scope.account,
        at: new Date(at),
      },
    })
  })
}

/** The edition in force of a programme whose guides are open, for anybody; null when they are closed or there is no such programme. */
export const readOpenGuides = (programme: string) => beforeSignIn((tx) => findOpenEdition(tx, programme))
