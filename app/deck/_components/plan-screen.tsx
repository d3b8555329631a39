import { useState } from 'react'
import { Field } from '@/app/_components/ui/field'
import { writeRoute } from '../state/address'
import { withHere } from '../state/plan'
import { findPairs } from '../state/roster'
import { useDeck } from './deck-context'
import { Lost } from './lost'
import { PlanForAll } from './plan-for-all'
import { PlanWatch, type PlanWatchProps } from './plan-watch'
import { Top } from './top'
import { usePlan } from './use-plan'
import { whichDay } from './when'

/** How many of the skills that a number or a word finds are shown. */
const most = 6

/** The training plan of the day: who is here, and what to watch of each. */
export function PlanScreen({ squad: id }: { squad: string }) {
  const { roster } = useDeck()
  const { kept, plan, earlier, copyEarlier, keep } = usePlan(id)
  const [words, setWords] = useState('')
  const found =
    words.trim() === ''
      ? []
      : findPairs(roster, words)
          .slice(0, most)
          .map(({ key }) => key)
  const squad = roster.snapshot.squads.find((candidate) => candidate.id === id)
  if (!squad) return <Lost>This squad is not in your clubs any more.</Lost>
  const members = squad.divers.flatMap((diver) => roster.divers.get(diver) ?? [])
  return (
    <>
      <Top back={{ to: { at: 'squads' }, label: 'Back to the divers' }}>
        <h1 className="text-18">Today’s plan</h1>
        <p className="deck-sub">
          {squad.name} · {whichDay(plan.day)}
        </p>
      </Top>
      <main id="main" className="deck-page">
        <p role="status" className="deck-sub">
          {kept ? 'Kept on this phone.' : 'Tick who is here and what to watch: each tap is kept on this phone.'}
        </p>
        {earlier && !kept ? (
          <button type="button" className="button button-go deck-wide" onClick={copyEarlier}>
            Copy what was watched on {whichDay(earlier.day)}
          </button>
        ) : null}
        <Field
          label="Find a skill"
          name="words"
          type="search"
          autoComplete="off"
          placeholder="A dive number or a word"
          hint={words.trim() !== '' && found.length === 0 ? 'No skill has this number or word.' : undefined}
          value={words}
          onChange={(event) => setWords(event.target.value)}
        />
        <PlanForAll plan={plan} keep={keep} found={found} />
        <h2 className="deck-head">Who is here, and what to watch</h2>
        <ul className="deck-list">
          {members.map((diver) => (
            <PlanDiver key={diver.id} diver={diver} plan={plan} keep={keep} found={found} />
          ))}
        </ul>
        <p className="deck-pair">
          <a className="button button-go" href={writeRoute({ at: 'squads' })}>
            To the divers
          </a>
        </p>
      </main>
    </>
  )
}

function PlanDiver({ diver, plan, keep, found }: PlanWatchProps) {
  const here = plan.here.includes(diver.id)
  return (
    <li className="deck-refused">
      <label>
        <input
          type="checkbox"
          checked={here}
          onChange={(event) => keep(withHere(plan, diver.id, event.target.checked))}
        />
        <b className="ps-2">{diver.name}</b>
      </label>
      {diver.standDown ? <strong className="deck-sub text-coral">{diver.standDown}</strong> : null}
      {here ? <PlanWatch diver={diver} plan={plan} keep={keep} found={found} /> : null}
    </li>
  )
}
