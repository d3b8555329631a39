import type { AttemptItem, ObservationItem } from '@/lib/assessment/deck/contract'
import { sentence } from '@/lib/assessment/readiness/grammar'
import { type RefusedItem, succeeds } from '../queue/deck-queue'
import { writeRoute } from '../state/address'
import type { Draft } from '../state/draft'
import { makeMended } from '../state/items'
import { phaseMarks } from '../state/phase-marks'
import { ContactButton } from './contact-button'
import { useDeck } from './deck-context'
import { Lost } from './lost'
import { MoreScreen } from './more-screen'
import { RateTop } from './rate-top'
import { RatingPanel } from './rating-panel'
import { RestChoice } from './rest-choice'
import { SendingNotice } from './sending-notice'
import { UnwatchedDialog } from './unwatched-dialog'
import { useMending } from './use-mending'
import { type Observed, useObserved } from './use-observed'
import { goInstead } from './use-route'

/** The attempt that an observation is of: refused with it, waiting, or seen before. */
function useAttempt(observation: ObservationItem | undefined): AttemptItem | undefined {
  const { waiting, state } = useDeck()
  const items = [
    ...waiting.refused.map(({ item }) => item),
    ...waiting.unsent,
    ...state.seen.map(({ attempt }) => attempt),
  ]
  return items.find((item): item is AttemptItem => item.kind === 'attempt' && item.id === observation?.attempt)
}

/** A refused observation opened to be changed and sent again. */
export function MendScreen({ id, more }: { id: string; more: boolean }) {
  const { waiting } = useDeck()
  const entry = waiting.refused.find(({ item }) => item.id === id)
  const observation = entry?.item.kind === 'observation' ? entry.item : undefined
  const attempt = useAttempt(observation)
  const observedOf = useObserved()
  const observed = attempt ? observedOf(attempt) : null
  if (!entry || !observation || !attempt || !observed) return <Lost>Nothing here needs mending any more.</Lost>
  return <Mend refused={entry} attempt={attempt} observation={observation} observed={observed} more={more} />
}

interface MendProps {
  readonly refused: RefusedItem
  readonly attempt: AttemptItem
  readonly observation: ObservationItem
  readonly observed: Observed
  readonly more: boolean
}

function Mend({ refused: { answer }, attempt, observation, observed, more }: MendProps) {
  const { pair, name, video, sheet } = observed
  const { queue, dispatch, stamp } = useDeck()
  const { id } = observation
  const send = async (draft: Draft, rest: boolean): Promise<void> => {
    const mended = makeMended(observation, draft, rest, answer.code === 'same id, other content', stamp())
    if (!(await succeeds(queue.mend(id, mended)))) return
    dispatch({ type: 'mended', key: id, item: mended })
    goInstead({ at: 'unsent' })
  }
  const moreRoute = { at: 'mend more', item: id } as const
  const goOn = (draft: Draft, rest: boolean) => void send(draft, rest)
  const mending = useMending({ observation, observed, more: moreRoute, goOn })
  const { open, rest, problem } = mending
  if (more) return <MoreScreen open={open} back={{ at: 'mend', item: id }} video={video} problem={problem} />
  return (
    <>
      <RateTop name={name} pair={pair} back={{ to: { at: 'unsent' }, label: 'Back to unsent' }} word="to mend" />
      <RatingPanel
        open={open}
        title={`${pair.skill.title}, to mend`}
        marks={phaseMarks(sheet, open.draft.ratings, rest)}
        more={writeRoute(moreRoute)}
        status={problem ?? ''}
        notice={
          <>
            <SendingNotice />
            <p className="deck-notice">{sentence(answer.message ?? 'the server refused it without a reason')}</p>
            <RestChoice rest={rest} onChange={mending.setRest} />
          </>
        }
      >
        <ContactButton diver={attempt.diver} pair={pair} attempt={attempt.id} />
        <button type="button" className="button button-go deck-keep" onClick={mending.tryIt}>
          Send again
        </button>
      </RatingPanel>
      <UnwatchedDialog rows={mending.asks} onClose={mending.rateThem} onNotWatched={mending.notWatched} />
    </>
  )
}
