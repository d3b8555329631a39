import { writeRoute } from '../state/address'
import { phaseMarks } from '../state/phase-marks'
import { ContactButton } from './contact-button'
import { useDeck } from './deck-context'
import { FilmedButton } from './filmed-button'
import { NextDiverLink } from './next-diver'
import { RateTop } from './rate-top'
import { RatingPanel } from './rating-panel'
import { SendingNotice } from './sending-notice'
import { UnwatchedDialog } from './unwatched-dialog'
import type { OpenDraft } from './use-draft'
import type { Keeping } from './use-keep'
import type { Subject } from './use-subject'

interface RateAttemptProps {
  readonly subject: Subject
  readonly open: OpenDraft
  readonly keeping: Keeping
}

/** One attempt being rated. Until its first mark the rule still shows the one kept before it. */
export function RateAttempt({ subject, open, keeping }: RateAttemptProps) {
  const { state } = useDeck()
  const { diver, pair, slot, call } = subject
  const keptId = state.justKept[slot]
  const kept = state.seen.find(({ observation }) => observation.id === keptId)?.observation
  const shown = kept ?? { ratings: open.draft.ratings, restAsExpected: false }
  return (
    <>
      <RateTop
        name={diver.shortName}
        pair={pair}
        back={{ to: { at: 'diver', diver: diver.id }, label: `Back to ${diver.shortName}` }}
        call={call}
        word="just watching"
      />
      <RatingPanel
        open={open}
        title={`${pair.skill.title}, ${kept ? 'the attempt just kept' : 'this attempt'}`}
        marks={phaseMarks(open.sheet, shown.ratings, shown.restAsExpected)}
        kept={kept}
        more={writeRoute({ at: 'more', diver: diver.id, pair: pair.key })}
        filmed={<FilmedButton open={open} video={diver.video !== false} />}
        status={keeping.problem ?? (kept ? 'Kept.' : '')}
        notice={
          <>
            <SendingNotice />
            {subject.closed ? <p className="deck-notice">{subject.closed}</p> : null}
          </>
        }
        beside={kept ? <NextDiverLink subject={subject} /> : null}
      >
        <ContactButton diver={diver.id} pair={pair} />
        <button type="button" className="button deck-keep" onClick={() => keeping.keep(false)}>
          Keep
        </button>
        <button type="button" className="button button-go deck-keep" onClick={() => keeping.keep(true)}>
          Rest as expected · keep
        </button>
      </RatingPanel>
      <UnwatchedDialog rows={keeping.asks} onClose={keeping.rateThem} onNotWatched={keeping.keepUnwatched} />
    </>
  )
}
