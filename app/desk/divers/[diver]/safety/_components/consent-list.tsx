import { FormField, FormSelect } from '@/app/_components/ui/action-fields'
import { ActionForm, type FormAction } from '@/app/_components/ui/action-form'
import { Fold } from '@/app/_components/ui/fold'
import { LogRow } from '@/app/_components/ui/sheet'
import type { ConsentView } from '../loader'

interface ConsentListProps {
  readonly consents: readonly ConsentView[]
  readonly action: FormAction
  readonly diver: string
  readonly head: boolean
}

const reaches = [
  { value: 'club', label: 'Coaches of the club' },
  { value: 'programme', label: 'Coaches of all clubs, without a name' },
  { value: 'everybody', label: 'Everybody who reads the guides, without a name' },
] as const

interface ConsentFormProps extends Pick<ConsentListProps, 'action' | 'diver'> {
  readonly consent: ConsentView
  /** What is recorded: that it is given, or given again for others; or that it is withdrawn. */
  readonly gives: boolean
}

function ConsentForm({ consent, action, diver, gives }: ConsentFormProps) {
  const { purpose, reach } = consent
  return (
    <ActionForm
      action={action}
      submit={gives ? 'Record the consent' : 'Record the withdrawal'}
      tone={gives ? 'plain' : 'stop'}
      prefix={`${purpose}-${gives ? 'given' : 'withdrawn'}-`}
      className="max-w-md"
      hidden={{ diver, purpose, given: gives ? 'yes' : 'no' }}
    >
      {gives && purpose === 'exemplar' ? (
        <FormSelect
          label="Who may see them"
          name="reach"
          className="control"
          defaultValue={reach ?? 'club'}
          hint="They show what is good, or a fault, in guides and beside the ratings. Withdrawing this consent, or the one to video, takes them away everywhere, for good."
        >
          {reaches.map(({ value, label }) => (
            <option key={value} value={value}>
              {label}
            </option>
          ))}
        </FormSelect>
      ) : null}
      {!gives && purpose === 'video' ? (
        <p className="measure">
          It ends for good what was named as an exemplar: given again, films show again, and each moment has to be named
          again.
        </p>
      ) : null}
      <FormField
        label={gives ? 'Who gives it' : 'Who withdraws it'}
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
              <ConsentForm consent={consent} action={action} diver={diver} gives={!consent.given} />
            </Fold>
          ) : (
            <p className="text-soft">The head coach records it.</p>
          )}
          {consent.given && consent.reach && head ? (
            <Fold summary="Change who may see them">
              <ConsentForm consent={consent} action={action} diver={diver} gives />
            </Fold>
          ) : null}
        </LogRow>
      ))}
    </ul>
  )
}
