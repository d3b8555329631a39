import type { PairKey } from '@/lib/curriculum/edition/curriculum'
import { ratingSheet } from '../state/rating-sheet'
import { CallChoice } from './call-choice'
import { useDeck } from './deck-context'
import { Lost } from './lost'
import { MoreScreen } from './more-screen'
import { RateAttempt } from './rate-attempt'
import { useDraft } from './use-draft'
import { useKeep } from './use-keep'
import { type Subject, useSubject } from './use-subject'
import { useWakeLock } from './use-wake-lock'

interface RateScreenProps {
  readonly diver: string
  readonly pair: PairKey
  readonly more: boolean
}

/** A diver at a skill: first the question how many attempts count, then attempt after attempt. */
export function RateScreen({ diver, pair, more }: RateScreenProps) {
  const subject = useSubject(diver, pair)
  useWakeLock()
  if (!subject) return <Lost>This diver or this skill is not in the curriculum of your clubs any more.</Lost>
  return <RateSubject subject={subject} more={more} />
}

function RateSubject({ subject, more }: { subject: Subject; more: boolean }) {
  const { roster, state } = useDeck()
  const { slot, pair, atLevel, diver, call } = subject
  const sheet = ratingSheet(roster.curriculum, pair, atLevel)
  const open = useDraft(slot, sheet)
  const keeping = useKeep(subject, sheet, open)
  if (more)
    return (
      <MoreScreen
        open={open}
        back={{ at: 'rate', diver: diver.id, pair: pair.key }}
        subject={subject}
        video={diver.video !== false}
        problem={keeping.problem}
      />
    )
  const begun = call !== null || state.watching.includes(slot)
  if (!begun || diver.recordingStopped) return <CallChoice subject={subject} sheet={sheet} />
  return <RateAttempt subject={subject} open={open} keeping={keeping} />
}
