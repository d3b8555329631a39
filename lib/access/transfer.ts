/** A diver's way from one club to another, as far as the rules ask. */
export interface TransferSides {
  readonly fromClub: string
  readonly toClub: string
  /** The club whose head coach proposed it. */
  readonly proposedFor: string
  readonly agreedAt: number | null
  readonly endedAt: number | null
}

/** What a head coach can do about a transfer: her word is wanted, she waits for the other's, or it is settled. */
export type TransferStep = 'to agree' | 'waiting' | 'complete' | 'ended'

/** The club whose consent is still wanted: the one that did not propose it. */
export const otherSide = ({ fromClub, toClub, proposedFor }: TransferSides): string =>
  proposedFor === fromClub ? toClub : fromClub

/** How a transfer stands for somebody who heads the given clubs. It is complete when both clubs' head coaches have said so. */
export function transferStep(transfer: TransferSides, headed: readonly string[]): TransferStep {
  if (transfer.agreedAt !== null) return 'complete'
  if (transfer.endedAt !== null) return 'ended'
  return headed.includes(otherSide(transfer)) ? 'to agree' : 'waiting'
}
