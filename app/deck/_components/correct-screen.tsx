import { useEffect, useState } from 'react'
import type { SnapshotObservation } from '@/lib/assessment/deck/contract'
import { succeeds } from '../queue/deck-queue'
import { writeRoute } from '../state/address'
import { draftOf } from '../state/draft'
import { makeCorrection, raisedCritical, unkept } from '../state/items'
import { phaseMarks } from '../state/phase-marks'
import { ContactButton } from './contact-button'
import { useDeck } from './deck-context'
import { Lost } from './lost'
import { MoreScreen } from './more-screen'
import { RateTop } from './rate-top'
import { RatingPanel } from './rating-panel'
import { ReasonDialog } from './reason-dialog'
import { SendingNotice } from './sending-notice'
import { UnwatchedDialog } from './unwatched-dialog'
import { useDraft } from './use-draft'
import { sayUnkept } from './use-keep'
import { type Observed, useObserved } from './use-observed'
import { go, goInstead } from './use-route'

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

function Correct({
  entry: { attempt, observation },
  observed: { pair, name, video, sheet, applies },
  more,
}: CorrectProps) {
  const { queue, dispatch, stamp } = useDeck()
  const open = useDraft(observation.id, sheet)
  const [asking, setAsking] = useState<'reason' | 'unwatched' | null>(null)
  const [rest, setRest] = useState(observation.restAsExpected)
  const [problem, setProblem] = useState<string | null>(null)
  // biome-ignore lint/correctness/useExhaustiveDependencies: opened once, then the draft is the coach's
  useEffect(
    () => dispatch({ type: 'open', key: observation.id, draft: draftOf(observation, applies) }),
    [observation.id],
  )
  const back = { at: 'correct', observation: observation.id } as const
  if (more) return <MoreScreen open={open} back={back} video={video} problem={problem} />

  const found = unkept(open.draft, sheet, rest)
  const ask = () => {
    const said = found ? sayUnkept(found) : null
    setProblem(said)
    if (found && found.toRate.length > 0) setAsking('unwatched')
    else if (said && !found?.nothing) go({ at: 'correct more', observation: observation.id })
    else if (!said) setAsking('reason')
  }
  const correct = async (reason: string): Promise<void> => {
    const correction = makeCorrection(observation, open.draft, rest, reason, stamp())
    setAsking(null)
    if (!(await succeeds(queue.add([correction])))) return
    dispatch({ type: 'corrected', key: observation.id, observation: correction })
    goInstead({ at: 'seen' })
  }
  const notWatched = () => {
    for (const { criterion } of found?.toRate ?? []) open.act({ type: 'not seen', criterion: criterion.key })
    const said = found ? sayUnkept(found) : null
    setProblem(said)
    setAsking(said ? null : 'reason')
  }
  const raised = raisedCritical(observation, open.draft, sheet)
  return (
    <>
      <RateTop name={name} pair={pair} back={{ to: { at: 'seen' }, label: 'Back to what you saw' }} word="correction" />
      <RatingPanel
        open={open}
        title={`${pair.skill.title}, corrected`}
        marks={phaseMarks(sheet, open.draft.ratings, rest)}
        more={writeRoute({ at: 'correct more', observation: observation.id })}
        status={problem ?? (raised.length > 0 ? raisedText : '')}
        notice={
          <>
            <SendingNotice />
            <label className="deck-check">
              <input type="checkbox" checked={rest} onChange={(event) => setRest(event.target.checked)} />
              Rest as expected
            </label>
          </>
        }
      >
        <ContactButton diver={attempt.diver} pair={pair} attempt={attempt.id} />
        <button type="button" className="button button-go deck-keep" onClick={ask}>
          Correct it
        </button>
      </RatingPanel>
      <UnwatchedDialog
        rows={asking === 'unwatched' ? (found?.toRate ?? []) : []}
        onClose={() => setAsking(null)}
        onNotWatched={notWatched}
      />
      <ReasonDialog
        open={asking === 'reason'}
        onClose={() => setAsking(null)}
        onReason={(reason) => void correct(reason)}
      />
    </>
  )
}
