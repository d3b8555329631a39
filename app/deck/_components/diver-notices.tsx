import type { SnapshotDiver } from '@/lib/assessment/deck/contract'

/** What a coach must know of a diver before she dives, beside a stand-down. */
export function DiverNotices({ diver: { care, recordingStopped } }: { diver: SnapshotDiver }) {
  return [recordingStopped, care]
    .filter((text) => text !== null && text !== undefined)
    .map((text) => (
      <p key={text} role="note" className="deck-notice">
        {text}
      </p>
    ))
}
