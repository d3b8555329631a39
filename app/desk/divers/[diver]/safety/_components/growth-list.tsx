import { FormField } from '@/app/_components/ui/action-fields'
import { ActionForm, type FormAction } from '@/app/_components/ui/action-form'
import { Fold } from '@/app/_components/ui/fold'
import { Notice } from '@/app/_components/ui/notice'
import { LogRow } from '@/app/_components/ui/sheet'

interface GrowthListProps {
  readonly care: string | null
  readonly notes: readonly { readonly id: string; readonly when: string; readonly text: string }[]
  readonly action: FormAction
  readonly diver: string
  readonly given: string
  readonly today: string
}

/** Notes that a diver has grown quickly: they change no status, and ask for care for a while. */
export function GrowthList({ care, notes, action, diver, given, today }: GrowthListProps) {
  return (
    <>
      {care ? (
        <LogRow>
          <Notice>{care}</Notice>
        </LogRow>
      ) : null}
      <ul>
        {notes.map(({ id, when, text }) => (
          <LogRow key={id} as="li" margin={when}>
            <p className="measure">{text}</p>
          </LogRow>
        ))}
      </ul>
      <LogRow>
        <Fold summary={`Note that ${given} has grown quickly`}>
          <ActionForm
            action={action}
            submit="Note it"
            tone="plain"
            prefix="growth-"
            className="max-w-md"
            hidden={{ diver }}
          >
            <FormField label="Seen on" name="notedOn" type="date" defaultValue={today} required />
            <FormField
              label="In words"
              name="words"
              autoComplete="off"
              hint="If you like. Coaches of the club read it."
            />
          </ActionForm>
        </Fold>
      </LogRow>
    </>
  )
}
