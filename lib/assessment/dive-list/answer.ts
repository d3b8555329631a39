import type { PairKey } from '../../curriculum/edition/curriculum'
import type { WhyNoList } from '../../curriculum/event/why-no-list'

/** Why a diver cannot enter an event: the dives, or her age on 31 December of its season. */
export type WhyNotEntered =
  | WhyNoList
  | { readonly kind: 'no birth date' }
  | { readonly kind: 'outside the band'; readonly age: number }

/** A dive of a list that was found, with the ids of what holds it: the signature, and the attempts that it cites. */
export interface EnteredDive {
  readonly pair: PairKey
  readonly part: number
  readonly tenths: number
  readonly evidence: readonly string[]
}

/** Whether a list is legal from what is held now; from that and what is only to be renewed; or not, with every reason. */
export type DiveListAnswer =
  | { readonly legal: 'now'; readonly list: readonly EnteredDive[] }
  | { readonly legal: 'once renewed'; readonly list: readonly EnteredDive[]; readonly renew: readonly PairKey[] }
  | { readonly legal: 'no'; readonly because: readonly WhyNotEntered[]; readonly lapsed: readonly PairKey[] }
