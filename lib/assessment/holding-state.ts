import type { Doubt } from './shortfall'
import type { Signed } from './signed'
import type { EpochDay } from './time'

/** What has become of one sign-off or recognition on the date. */
export interface SignedState extends Signed {
  readonly state: 'current' | 'in doubt' | 'lapsed' | 'revoked'
  /** False for a recognition that nobody here has seen yet: it opens for training and advances nothing. */
  readonly shown: boolean
  /** The last valid day, and the last on which the recheck renews it; both inclusive. */
  readonly validUntil: EpochDay
  readonly renewBy: EpochDay
  readonly doubts: readonly Doubt[]
}

/** How a diver holds a pair on the date: the best of what was signed there, and all of it. */
export interface HoldingState {
  readonly state: 'none' | 'current' | 'recognised' | 'in doubt' | 'lapsed' | 'revoked'
  /** What gives the state: of several the best, then the highest level, then the newest. Null when nothing was signed. */
  readonly by: SignedState | null
  readonly all: readonly SignedState[]
}

/** Nothing was ever signed or recognised. */
export const noHolding: HoldingState = { state: 'none', by: null, all: [] }
const ranks = { current: 4, recognised: 3, 'in doubt': 2, lapsed: 1, revoked: 0, none: -1 } as const

/** The state as a holding has it: current but not shown here is recognised. */
export const stateOf = (signed: SignedState): HoldingState['state'] =>
  signed.state === 'current' && !signed.shown ? 'recognised' : signed.state

/** Of several the best; then the highest level, then the newest. Undefined of none. */
export const bestOf = (all: readonly SignedState[]): SignedState | undefined =>
  [...all].sort((a, b) => ranks[stateOf(b)] - ranks[stateOf(a)] || b.level - a.level || b.at - a.at)[0]

/** True when the pair is held at the level on the date, shown here or recognised. */
export const isCurrentAt = (holding: HoldingState, level: number): boolean =>
  holding.all.some((signed) => signed.state === 'current' && signed.level >= level && level >= 0)
