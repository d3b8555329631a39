import { PlumbRule } from '@/app/_components/domain/arc/plumb-rule'
import { succeeds } from '../queue/deck-queue'
import { writeRoute } from '../state/address'
import { makeCall } from '../state/items'
import { phaseMarks } from '../state/phase-marks'
import type { RatingSheet } from '../state/rating-sheet'
import { ContactButton } from './contact-button'
import { useDeck } from './deck-context'
import { DiverNotices } from './diver-notices'
import { LastContact } from './last-contact'
import { NextDiver } from './next-diver'
import { RateTop } from './rate-top'
import { SayLine } from './say-line'
import { SendingNotice } from './sending-notice'
import type { Subject } from './use-subject'

const counts = [1, 2, 3, 4, 5] as const

/** The attempt kept last, its bobs dropping to their ratings. */
function JustKept({ subject, sheet }: { subject: Subject; sheet: RatingSheet }) {
  const { state } = useDeck()
  const kept = state.seen.find(({ observation }) => observation.id === state.justKept[subject.slot])?.observation
  if (!kept) return null
  return (
    <section aria-label="Just kept">
      <div className="deck-phase-head">
        <p role="status" className="deck-said">
          Kept. All that was called is done.
        </p>
        <a className="button" href={writeRoute({ at: 'correct', observation: kept.id })}>
          Correct it
        </a>
      </div>
      <div className="deck-rule deck-rule-kept">
        <PlumbRule
          title={`${subject.pair.skill.title}, the attempt just kept`}
          phases={phaseMarks(sheet, kept.ratings, kept.restAsExpected)}
        />
      </div>
      <SayLine sheet={sheet} seen={kept} status="" />
      <NextDiver subject={subject} />
    </section>
  )
}

/** Asked before the dives: which of them count cannot be chosen afterwards. */
export function CallChoice({ subject, sheet }: { subject: Subject; sheet: RatingSheet }) {
  const { roster, queue, dispatch, stamp } = useDeck()
  const { diver, pair, slot, closed, atLevel } = subject
  const level = roster.curriculum.levels[roster.curriculum.levelIndex(atLevel)]?.title ?? atLevel
  const stopped = typeof diver.recordingStopped === 'string'
  const call = async (count: number): Promise<void> => {
    const item = makeCall({ diver: diver.id, pair, atLevel }, count, stamp())
    if (await succeeds(queue.add([item]))) dispatch({ type: 'call', slot, call: item })
  }
  return (
    <>
      <RateTop
        name={diver.shortName}
        pair={pair}
        back={{ to: { at: 'diver', diver: diver.id }, label: `Back to ${diver.shortName}` }}
      />
      <main id="main" className="deck-page deck-page-bar">
        <SendingNotice />
        <JustKept subject={subject} sheet={sheet} />
        <h2 className="text-24">How many of the next attempts count?</h2>
        <p>
          {pair.skill.title}, judged at {level}. Call them before the first dive: all that are called count, the good
          and the bad.
        </p>
        {diver.standDown ? (
          <p role="note" className="deck-notice">
            {diver.standDown} A diver who is stood down takes no board move and no new dive. <LastContact />
          </p>
        ) : null}
        <DiverNotices diver={diver} />
        {closed ? (
          <p role="note" className="deck-notice">
            {closed} It may be rated; it earns nothing until the head coach releases it.
          </p>
        ) : null}
        <fieldset className="deck-counts">
          <legend className="sr-only">Attempts that count</legend>
          {counts.map((count) => (
            <button
              key={count}
              type="button"
              className="button deck-count"
              aria-label={`Call ${count}`}
              disabled={stopped}
              onClick={() => void call(count)}
            >
              {count}
            </button>
          ))}
        </fieldset>
        <button
          type="button"
          className="button deck-wide"
          disabled={stopped}
          onClick={() => dispatch({ type: 'watch', slot })}
        >
          Just watching
        </button>
        <footer className="deck-bar">
          <ContactButton diver={diver.id} pair={pair} />
        </footer>
      </main>
    </>
  )
}
