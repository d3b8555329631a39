import { FormField } from '@/app/_components/ui/action-fields'
import { ActionForm, type FormAction } from '@/app/_components/ui/action-form'
import { Fold } from '@/app/_components/ui/fold'
import { LogRow } from '@/app/_components/ui/sheet'

interface Consent {
  readonly purpose: string
  readonly title: string
  readonly given: boolean
  readonly sentence: string
  readonly history: readonly string[]
}

interface ConsentListProps {
  readonly consents: readonly Consent[]
  readonly action: FormAction
  readonly diver: string
  readonly head: boolean
}

function ConsentForm({ consent, action, diver }: { consent: Consent } & Pick<ConsentListProps, 'action' | 'diver'>) {
  const { purpose, given } = consent
  return (
    <ActionForm
      action={action}
      submit={given ? 'Record the withdrawal' : 'Record the consent'}
      tone={given ? 'stop' : 'plain'}
      prefix={`${purpose}-`}
      className="max-w-md"
      hidden={{ diver, purpose, given: given ? 'no' : 'yes' }}
    >
      <FormField
        label={given ? 'Who withdraws it' : 'Who gives it'}
        name="saidBy"
        autoComplete="off"
        hint="Who, and how: in writing, at the desk. Head coaches of the club read it."
        required
      />
    </ActionForm>
  )
}

/** One consent a purpose: how it stands, and what was recorded before. Anyone may record a withdrawal. */
export function ConsentList({ consents, action, diver, head }: ConsentListProps) {
  return (
    <ul>
      {consents.map((consent) => (
        <LogRow key={consent.purpose} as="li" margin={consent.given ? 'given' : 'not given'}>
          <h3 className="font-bold">{consent.title}</h3>
          <p className="measure">{consent.sentence}</p>
          {consent.history.map((text) => (
            <p key={text} className="text-13 text-soft">
              {text}
            </p>
          ))}
          {consent.given || head ? (
            <Fold summary={consent.given ? 'Withdraw it' : 'Record it'}>
              <ConsentForm consent={consent} action={action} diver={diver} />
            </Fold>
          ) : (
            <p className="text-soft">The head coach records it.</p>
          )}
        </LogRow>
      ))}
    </ul>
  )
}
