import type { AnsweredHow } from '../question'
import type { ClosesKind, IncidentKind, SignOffWaiver, TargetKey } from '../record'

/** An observation as it was when it was cited: its id and the digest of its canonical form. */
export interface Cited {
  readonly attempt: string
  readonly observation: string
  readonly digest: string
}

/** A question about a moment of the evidence that stood when it was decided, and what was said of it. Its words by their commitments. */
export interface SaidQuestion {
  readonly question: string
  readonly observation: string
  readonly by: string
  readonly how: AnsweredHow
  /** Commitment to what was asked. */
  readonly asked: string
  /** Commitments to what the coach answered, oldest first. */
  readonly answers: readonly string[]
  /** The observation by which she corrected what was asked about. */
  readonly correction: string | null
  /** Commitment to why it is left open. */
  readonly reason: string | null
}

/**
 * What the ledger keeps: pseudonymous ids and digests, never a name, a note or a medical reason. The kinds are closed;
 * a reason is referred to by the salted commitment of its erasable words.
 */
export type LedgerEvent =
  | { readonly kind: 'edition published'; readonly edition: string; readonly number: number; readonly by: string }
  | {
      readonly kind: 'signed off'
      readonly signOff: string
      readonly diver: string
      readonly club: string
      readonly skill: string
      readonly place: string
      readonly level: string
      readonly edition: string
      readonly by: string
      readonly method: 'standard' | 'recheck'
      readonly waiver: SignOffWaiver | null
      readonly reason: string | null
      readonly evidence: readonly Cited[]
    }
  | {
      readonly kind: 'revoked'
      readonly revocation: string
      readonly subject: string
      readonly subjectKind: 'sign-off' | 'recognition'
      readonly diver: string
      readonly club: string
      readonly by: string
      readonly reason: string
    }
  | {
      readonly kind: 'recognised'
      readonly recognition: string
      readonly diver: string
      readonly club: string
      readonly what: string
      readonly by: string
      readonly reason: string
    }
  | {
      readonly kind: 'decided'
      readonly decision: string
      readonly diver: string
      readonly club: string
      readonly target: TargetKey
      readonly outcome: 'approve' | 'override' | 'return' | 'withdraw'
      readonly edition: string
      /** SHA-256 of the canonical finding that was decided on. */
      readonly finding: string
      readonly by: string
      readonly waivesAge: boolean
      readonly wantsMoreOf: readonly string[]
      readonly diverWants: 'yes' | 'not yet' | null
      readonly reason: string | null
      /** Commitment to the words that say why no other coach is in the evidence. */
      readonly onlyCoach: string | null
      readonly evidence: readonly string[]
      /** Since version 2, of an approval or override: the questions that stood, oldest first. */
      readonly questions: readonly SaidQuestion[]
    }
  | {
      readonly kind: 'incident recorded'
      readonly incident: string
      readonly diver: string
      readonly club: string
      readonly skill: string
      readonly place: string
      readonly what: IncidentKind
      readonly by: string
    }
  | {
      readonly kind: 'incident released'
      readonly release: string
      readonly incident: string
      readonly diver: string
      readonly club: string
      readonly by: string
      readonly reason: string
      /** Of a knock to the head: that somebody wrote that medical advice was followed; never the words. */
      readonly adviceFollowed: boolean
    }
  | {
      readonly kind: 'stood down'
      readonly standDown: string
      readonly diver: string
      readonly club: string
      readonly closes: ClosesKind
      readonly from: string
      readonly until: string | null
      readonly by: string
    }
  | {
      readonly kind: 'stand-down ended'
      readonly standDown: string
      readonly diver: string
      readonly club: string
      /** Its last day, inclusive. */
      readonly until: string
      readonly by: string
    }
  | {
      readonly kind: 'role changed'
      readonly account: string
      readonly club: string | null
      readonly role: string
      readonly change: 'given' | 'ended'
      readonly by: string
    }

export type LedgerKind = LedgerEvent['kind']

/** Version of a payload's shape, by kind; it stands in the row and inside the hashed bytes. Readers for each version stay. */
export const ledgerSchemaVersion = (kind: LedgerKind): number => (kind === 'decided' ? 2 : 1)
