import { Button } from '@/app/_components/ui/button'
import { SelectField } from '@/app/_components/ui/field'
import type { RegionFilter } from '@/lib/reports/filter'
import type { RegionQuery } from '@/lib/reports/query'

interface FilterFormProps {
  readonly query: RegionQuery
  readonly choices: Readonly<Record<keyof RegionFilter, readonly { readonly value: string; readonly label: string }[]>>
}

const fields: readonly (readonly [keyof RegionFilter, string, string])[] = [
  ['club', 'Club', 'All clubs'],
  ['level', 'Level held', 'Any level'],
  ['age', 'Age this year', 'Any age'],
  ['family', 'Family', 'All families'],
  ['place', 'Place', 'All places'],
]

const groupings = [
  ['step', 'levels and moves'],
  ['club', 'clubs'],
  ['age', 'ages'],
] as const

/** What is looked at, kept in the address: a form that is sent as a question, so that what it shows can be shared. */
export function FilterForm({ query, choices }: FilterFormProps) {
  const chosen = Object.values(query.filter).some((value) => value !== null) || query.by !== 'step'
  return (
    <form action="/region" className="region-filter no-print" aria-label="What is looked at">
      {fields.map(([name, label, all]) => (
        <SelectField key={name} name={name} label={label} defaultValue={query.filter[name] ?? ''}>
          <option value="">{all}</option>
          {choices[name].map(({ value, label }) => (
            <option key={value} value={value}>
              {label}
            </option>
          ))}
        </SelectField>
      ))}
      <SelectField name="by" label="Rows" defaultValue={query.by}>
        {groupings.map(([value, label]) => (
          <option key={value} value={value}>
            {label}
          </option>
        ))}
      </SelectField>
      <div className="region-filter-go">
        <Button>Show</Button>
        {chosen ? <a href="/region">Show everybody</a> : null}
        <p className="text-13 text-soft">
          Club, level and age choose divers. Family and place choose board moves, and what is waited for.
        </p>
      </div>
    </form>
  )
}
