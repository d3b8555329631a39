import { useState } from 'react'
import { DiveNumber } from '@/app/_components/domain/dive/dive-number'
import { Field } from '@/app/_components/ui/field'
import type { PairState } from '@/lib/assessment/deck/contract'
import { placeFacts } from '@/lib/curriculum/place'
import { writeRoute } from '../state/address'
import { groupPairs, type StandingPair } from '../state/roster'
import { CalledList } from './called-list'
import { useDeck } from './deck-context'
import { DiverNotices } from './diver-notices'
import { LastContact } from './last-contact'
import { Lost } from './lost'
import { Top } from './top'

const groupNames: Record<PairState, string> = { 'to sign': 'To sign', open: 'Open', held: 'Held', closed: 'Closed' }

function PairLine({ diver, entry: { pair, because } }: { diver: string; entry: StandingPair }) {
  return (
    <li>
      <a className="deck-line" href={writeRoute({ at: 'rate', diver, pair: pair.key })}>
        <span className="deck-line-main">
          {pair.skill.dive ? <DiveNumber>{pair.skill.dive}</DiveNumber> : null} {pair.skill.title}
          <span className="deck-line-place">{placeFacts[pair.holding.place].label}</span>
        </span>
        {because ? <span className="deck-sub">{because}</span> : null}
      </a>
    </li>
  )
}

/** What a diver can be rated on, by how it stands for her. */
export function DiverScreen({ diver: id }: { diver: string }) {
  const { roster } = useDeck()
  const [words, setWords] = useState('')
  const diver = roster.divers.get(id)
  if (!diver) return <Lost>This diver is not in your clubs any more.</Lost>
  const groups = groupPairs(roster, diver, { words, place: null })
  const level = roster.curriculum.levels[roster.curriculum.levelIndex(diver.level)]?.title ?? diver.level
  return (
    <>
      <Top back={{ to: { at: 'squads' }, label: 'Back to the divers' }}>
        <h1 className="text-18">{diver.name}</h1>
        <p className="deck-sub">towards {level}</p>
      </Top>
      <main id="main" className="deck-page">
        {diver.standDown ? (
          <p role="note" className="deck-notice">
            {diver.standDown} A diver who is stood down takes no board move and no new dive, whatever the numbers say.{' '}
            <LastContact />
          </p>
        ) : null}
        <DiverNotices diver={diver} />
        <CalledList diver={id} />
        <Field
          label="Find a skill"
          name="words"
          type="search"
          autoComplete="off"
          placeholder="A dive number or a word"
          value={words}
          onChange={(event) => setWords(event.target.value)}
        />
        {groups.map(({ state, pairs }) => (
          <section key={state} aria-label={groupNames[state]}>
            <h2 className="deck-head">
              {groupNames[state]} <span className="font-normal text-soft">{pairs.length}</span>
            </h2>
            {state === 'closed' ? (
              <p className="deck-sub pb-2">
                Can be rated; earns nothing until the head coach releases it. <LastContact />
              </p>
            ) : null}
            <ul className="deck-list">
              {pairs.map((entry) => (
                <PairLine key={entry.pair.key} diver={id} entry={entry} />
              ))}
            </ul>
          </section>
        ))}
        {groups.length === 0 ? (
          <p className="py-3 text-soft">No skill has this number or word. Clear the field to see all of them.</p>
        ) : null}
      </main>
    </>
  )
}
