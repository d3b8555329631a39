import { ArcLine } from '@/app/_components/domain/arc/arc'
import { DiveNumber } from '@/app/_components/domain/dive/dive-number'
import { arcPath } from '@/lib/assessment/arc-subject'
import type { SnapshotObservation } from '@/lib/assessment/deck/contract'
import { placeFacts } from '@/lib/curriculum/place'
import { writeRoute } from '../state/address'
import { phaseMarks } from '../state/phase-marks'
import { useDeck } from './deck-context'
import { Top } from './top'
import { useObserved } from './use-observed'
import { when } from './when'

/** What this coach saw lately, newest first; each can be opened and corrected. */
export function SeenScreen() {
  const { state } = useDeck()
  const waits = state.seen.filter(({ attempt }) => attempt.filmed).length
  return (
    <>
      <Top back={{ to: { at: 'squads' }, label: 'Back to the divers' }}>
        <h1 className="text-18">What you saw lately</h1>
      </Top>
      <main id="main" className="deck-page">
        {waits > 0 ? (
          <p className="py-3">
            {waits === 1 ? '1 attempt waits for its clip.' : `${waits} attempts wait for their clip.`}{' '}
            <a href="/desk/clips">Link them at the desk</a>
          </p>
        ) : null}
        {state.seen.length > 0 ? (
          <ul className="deck-list">
            {state.seen.map((entry) => (
              <SeenLine key={entry.observation.id} entry={entry} />
            ))}
          </ul>
        ) : (
          <p className="py-3 text-soft">
            Nothing yet. What you keep on the deck stands here, so that you can correct it.
          </p>
        )}
      </main>
    </>
  )
}

function SeenLine({ entry: { attempt, observation } }: { entry: SnapshotObservation }) {
  const { waiting } = useDeck()
  const observed = useObserved()(attempt)
  if (!observed) return null
  const { pair, name, sheet } = observed
  const refused = waiting.refused.some(({ item }) => item.id === observation.id)
  const unsent = waiting.unsent.some(({ id }) => id === observation.id)
  const to = refused
    ? writeRoute({ at: 'mend', item: observation.id })
    : writeRoute({ at: 'correct', observation: observation.id })
  return (
    <li>
      <a className="deck-line deck-line-seen" href={to}>
        <span className="deck-line-main">
          {name} {pair.skill.dive ? <DiveNumber>{pair.skill.dive}</DiveNumber> : pair.skill.title}
          <span className="deck-line-place">{placeFacts[pair.holding.place].label}</span>
        </span>
        <span className="deck-sub">
          {when(observation.observedAt)}
          {observation.supersedes ? ' · corrected' : ''}
          {attempt.filmed ? ` · clip ${attempt.filmed.clip} waits for its link` : ''}
          {refused ? ' · to mend' : unsent ? ' · unsent' : ''}
        </span>
        <ArcLine
          title={`${pair.skill.title}, as rated`}
          {...arcPath(pair)}
          phases={phaseMarks(sheet, observation.ratings, observation.restAsExpected)}
        />
      </a>
    </li>
  )
}
