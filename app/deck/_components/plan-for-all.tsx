import { useState } from 'react'
import { Field } from '@/app/_components/ui/field'
import type { PairKey } from '@/lib/curriculum/edition/curriculum'
import { type DayPlan, withWatch } from '../state/plan'
import { findPairs } from '../state/roster'
import { useDeck } from './deck-context'
import { PairLabel } from './pair-label'

/** A skill that everybody who is here works on: found by number or word, chosen for all with one tap. */
export function PlanForAll({ plan, keep }: { plan: DayPlan; keep: (plan: DayPlan) => void }) {
  const { roster } = useDeck()
  const [words, setWords] = useState('')
  const isForAll = (pair: PairKey) =>
    plan.here.length > 0 && plan.here.every((diver) => plan.watch[diver]?.includes(pair))
  const shared = [...new Set(plan.here.flatMap((diver) => plan.watch[diver] ?? []))].filter(isForAll)
  const found = words.trim() === '' ? [] : findPairs(roster, words).slice(0, 8)
  const shown = [...new Set([...shared, ...found.map(({ key }) => key)])]
  return (
    <section aria-label="For everybody">
      <h2 className="deck-head">For everybody who is here</h2>
      <Field
        label="Find a skill"
        name="words"
        type="search"
        autoComplete="off"
        placeholder="A dive number or a word"
        value={words}
        onChange={(event) => setWords(event.target.value)}
      />
      <ul className="deck-squads pt-2">
        {shown.map((pair) => (
          <li key={pair}>
            <button
              type="button"
              className="deck-squad"
              aria-pressed={isForAll(pair)}
              onClick={() => keep(withWatch(plan, plan.here, pair, !isForAll(pair)))}
            >
              <span>
                <PairLabel pair={pair} />
              </span>
            </button>
          </li>
        ))}
      </ul>
      {words.trim() !== '' && found.length === 0 ? <p className="deck-sub">No skill has this number or word.</p> : null}
    </section>
  )
}
