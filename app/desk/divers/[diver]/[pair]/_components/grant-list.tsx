import { ActionPanel, type PanelAction } from '@/app/_components/domain/action-panel/action-panel'
import { LogRow, Section } from '@/app/_components/ui/sheet'
import { grantAction } from '@/app/desk/video/actions'

interface GrantListProps {
  readonly attempts: readonly { readonly id: string; readonly day: string }[]
  readonly coaches: readonly { readonly id: string; readonly name: string; readonly club: string }[]
  readonly granted: readonly {
    readonly attempt: string
    readonly coach: string
    readonly day: string
    readonly name: string
  }[]
  /** The page to come back to. */
  readonly back: string
}

const ask = ({ attempts, coaches, back }: GrantListProps): PanelAction => ({
  shortcut: 'g',
  label: 'Ask a coach of another club…',
  send: 'Grant this attempt',
  refused: 'Not granted',
  tone: 'plain',
  note: 'The coach sees the given name, the skill and the moment of this one attempt, and nothing that you rated.',
  sends: { granted: 'yes', back },
  asks: [
    {
      kind: 'one',
      name: 'attempt',
      legend: 'Attempt',
      choices: attempts.map(({ id, day }) => ({ value: id, label: day })),
    },
    {
      kind: 'one',
      name: 'coach',
      legend: 'Coach',
      choices: coaches.map(({ id, name, club }) => ({ value: id, label: `${name}, ${club}` })),
    },
  ],
})

const withdraw = (attempt: string, coach: string, back: string): PanelAction => ({
  shortcut: 'w',
  label: 'Withdraw…',
  send: 'Withdraw the grant',
  refused: 'Not withdrawn',
  tone: 'plain',
  note: 'The coach sees nothing of it from now on; what was rated stays.',
  sends: { granted: 'no', attempt, coach, back },
  asks: [],
})

/** Looks from other clubs: what is granted, and whom to ask. */
export function GrantList(props: GrantListProps) {
  const { attempts, coaches, granted, back } = props
  return (
    <Section title="A second look from another club" aside="One attempt, one coach, blind to your ratings.">
      {granted.map(({ attempt, coach, day, name }) => (
        <LogRow key={`${attempt} ${coach}`} margin={day}>
          <p className="pb-2">Granted to {name}.</p>
          <ActionPanel
            id={`${attempt}-${coach}`}
            action={grantAction}
            panel={withdraw(attempt, coach, back)}
            place="line"
          />
        </LogRow>
      ))}
      {attempts.length > 0 && coaches.length > 0 ? (
        <LogRow>
          <ActionPanel id="grant" action={grantAction} panel={ask(props)} place="line" />
        </LogRow>
      ) : null}
    </Section>
  )
}
