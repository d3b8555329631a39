import { Fold } from '@/app/_components/ui/fold'
import { LogRow } from '@/app/_components/ui/sheet'

/** A moment that another can be compared with. */
export interface Choice {
  readonly id: string
  readonly day: string
  readonly who: string
  readonly where: string
  /** Why it is named: that it stands out, or what it is an exemplar of. */
  readonly by: readonly string[]
  /** The page with both. */
  readonly href: string
}

/** Moments of one kind, those that stand out first and the others folded. */
export interface ChoiceGroup {
  readonly title: string
  readonly shown: readonly Choice[]
  readonly more: readonly Choice[]
}

const Row = ({ choice }: { choice: Choice }) => (
  <li>
    <a href={choice.href} className="inline-block min-h-6">
      {choice.who}, {choice.where}, {choice.day}
    </a>
    {choice.by.length > 0 ? <span className="text-soft"> · {choice.by.join(' and ')}</span> : null}
  </li>
)

/** The moments that one can be compared with; each leads to the page with both. */
export function Choices({ groups }: { groups: readonly ChoiceGroup[] }) {
  if (groups.length === 0)
    return (
      <LogRow>
        <p className="text-soft">
          No other moment shows this dive yet: keep one with a rating of it, here or with another diver of your clubs.
        </p>
      </LogRow>
    )
  return groups.map(({ title, shown, more }) => (
    <LogRow key={title}>
      <p>{title}</p>
      <ul className="grid gap-1 pt-1">
        {shown.map((choice) => (
          <Row key={`${choice.id} ${choice.by}`} choice={choice} />
        ))}
      </ul>
      {more.length > 0 ? (
        <div className="pt-2">
          <Fold summary={`${more.length} more`}>
            <ul className="grid gap-1">
              {more.map((choice) => (
                <Row key={`${choice.id} ${choice.by}`} choice={choice} />
              ))}
            </ul>
          </Fold>
        </div>
      ) : null}
    </LogRow>
  ))
}
