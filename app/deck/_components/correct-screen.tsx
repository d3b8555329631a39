import { useState } from 'react'
import type { SnapshotObservation } from '@/lib/assessment/deck/contract'
import { succeeds } from '../queue/deck-queue'
import { writeRoute } from '../state/address'
import { makeCorrection, raisedCritical } from '../state/items'
import { phaseMarks } from '../state/phase-marks'
import { ContactButton } from './contact-button'
import { useDeck } from './deck-context'
import { Lost } from './lost'
import { MoreScreen } from './more-screen'
import { RateTop } from './rate-top'
import { RatingPanel } from './rating-panel'
import { ReasonDialog } from './reason-dialog'
import { RestChoice } from './rest-choice'
import { SendingNotice } from './sending-notice'
import { UnwatchedDialog } from './unwatched-dialog'
import { useMending } from './use-mending'
import { type Observed, useObserved } from './use-observed'
import { goInstead } from './use-route'

/** An earlier observation opened again: what replaces it says why. */
export function CorrectScreen({ id, more }: { id: string; more: boolean }) {
  const { state } = useDeck()
  const entry = state.seen.find(({ observation }) => observation.id === id)
  const observedOf = useObserved()
  const observed = entry ? observedOf(entry.attempt) : null
  if (!entry || !observed) return <Lost>This observation is not on the deck any more.</Lost>
  return <Correct entry={entry} observed={observed} more={more} />
}

const raisedText = 'A critical rating that is raised or taken back counts when the head coach accepts it.'

interface CorrectProps {
  readonly entry: SnapshotObservation
  readonly observed: Observed
  readonly more: boolean
}

function Correct({ entry: { attempt, observation }, observed, more }: CorrectProps) {
  const { pair, name, video, sheet } = observed
  const { queue, dispatch, stamp } = useDeck()
  const [explaining, setExplaining] = useState(false)
  const moreRoute = { at: 'correct more', observation: observation.id } as const
  const mending = useMending({ observation, observed, more: moreRoute, goOn: () => setExplaining(true) })
  const { open, rest, problem } = mending
  const back = { at: 'correct', observation: observation.id } as const
  if (more) return <MoreScreen open={open} back={back} video={video} problem={problem} />

  const correct = async (reason: string): Promise<void> => {
    const correction = makeCorrection(observation, open.draft, rest, reason, stamp())
    setExplaining(false)
    if (!(await succeeds(queue.add([correction])))) return
    dispatch({ type: 'corrected', key: observation.id, observation: correction })
    goInstead({ at: 'seen' })
  }
  const raised = raisedCritical(observation, open.draft, sheet)
  return (
    <>
      <RateTop name={name} pair={pair} back={{ to: { at: 'seen' }, label: 'Back to what you saw' }} word="correction" />
      <RatingPanel
        open={open}
        title={`${pair.skill.title}, corrected`}
        marks={phaseMarks(sheet, open.draft.ratings, rest)}
        more={writeRoute(moreRoute)}
        status={problem ?? (raised.length > 0 ? raisedText : '')}
        notice={
          <>
            <SendingNotice />
            <RestChoice rest={rest} onChange={mending.setRest} />
          </>
        }
      >
        <ContactButton diver={attempt.diver} pair={pair} attempt={attempt.id} />
        <button type="button" className="button button-go deck-keep" onClick={mending.tryIt}>
          Correct it
        </button>
      </RatingPanel>
      <UnwatchedDialog rows={mending.asks} onClose={mending.rateThem} onNotWatched={mending.notWatched} />
      <ReasonDialog
        open={explaining}
        onClose={() => setExplaining(false)}
        onReason={(reason) => void correct(reason)}
      />
    </>
  )
}
