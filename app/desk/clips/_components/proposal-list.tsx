import { FormSelect } from '@/app/_components/ui/action-fields'
import type { MatchState } from '../[coach]/[day]/actions'

type Proposal = NonNullable<MatchState['proposal']>

/** What is proposed, an attempt a line. Only what is sure is chosen beforehand. */
export function ProposalList({ proposal: { clock, rows, unused } }: { proposal: Proposal }) {
  const sure = rows.filter(({ pick }) => pick !== '').length
  return (
    <section aria-label="Proposal" className="grid gap-3 border-t border-edge pt-4">
      <h2 className="text-18">
        {sure} of {rows.length} {rows.length === 1 ? 'dive' : 'dives'} {sure === 1 ? 'has' : 'have'} a clip
      </h2>
      <p className="measure text-soft">
        {clock} {unused}
      </p>
      <ul className="grid gap-4">
        {rows.map(({ attempt, time, who, name, clip, how, pick, choices }) => (
          <li key={attempt} className="border-t border-line pt-3">
            <FormSelect
              key={`${attempt} ${pick}`}
              label={`${time} ${who}, ${name} · clip ${clip}`}
              name={`pick:${attempt}`}
              hint={how}
              defaultValue={pick}
              disabled={choices.length === 0}
            >
              <option value="">link none</option>
              {choices.map(({ value, label }) => (
                <option key={value} value={value}>
                  {label}
                </option>
              ))}
            </FormSelect>
          </li>
        ))}
      </ul>
    </section>
  )
}
