import { FormField, FormSelect, FormTextArea } from '@/app/_components/ui/action-fields'
import { ActionForm, type FormAction } from '@/app/_components/ui/action-form'
import { Fold } from '@/app/_components/ui/fold'
import { Nothing, Notice } from '@/app/_components/ui/notice'
import { LogRow } from '@/app/_components/ui/sheet'
import type { IncidentView } from '../loader'

interface Clearing {
  readonly action: FormAction
  readonly diver: string
  /** The incident that the head coach came for from her list: its form is open, and she goes back there. */
  readonly at: string | null
}

function ClearForm({ action, diver, at, incident }: Clearing & { incident: IncidentView }) {
  const here = at === incident.id
  return (
    <ActionForm
      action={action}
      submit="Clear it"
      refused="Not cleared"
      prefix={`${incident.id}-`}
      className="max-w-md"
      hidden={{ diver, incident: incident.id, ...(here ? { back: 'queue' } : {}) }}
    >
      {incident.knock ? (
        <>
          <Notice tone="warning">
            After a knock to the head nobody is cleared on a coach’s judgement alone: medical advice, and the rules of
            the governing body.
          </Notice>
          <FormTextArea
            label="That medical advice was followed"
            name="statement"
            hint="Who advised it and when, no diagnosis. Read by head coaches of the club only."
            required
            autoFocus={here}
          />
        </>
      ) : null}
      <FormTextArea
        label="What was done about it, and why the diver may go on"
        name="reason"
        hint="The coaches of the club read it."
        required
        autoFocus={here && !incident.knock}
      />
    </ActionForm>
  )
}

function IncidentRow({ incident, clear }: { incident: IncidentView; clear: Clearing | null }) {
  return (
    <LogRow as="li" margin={incident.when}>
      <h3 className="font-bold">{incident.title}</h3>
      <p className="text-soft">Recorded by {incident.by}.</p>
      {incident.note ? <p className="measure">“{incident.note}”</p> : null}
      {incident.cleared ? <p>{incident.cleared}</p> : null}
      {incident.clearedWords.map((text) => (
        <p key={text} className="measure text-soft">
          {text}
        </p>
      ))}
      {incident.unaware.length > 0 ? (
        <Notice tone="warning">
          <p>Before this was known here. Look whether each still stands:</p>
          <ul className="mt-1">
            {incident.unaware.map((text) => (
              <li key={text}>{text}</li>
            ))}
          </ul>
        </Notice>
      ) : null}
      {clear && !incident.cleared ? (
        <Fold summary="Clear it in writing" open={clear.at === incident.id}>
          <ClearForm {...clear} incident={incident} />
        </Fold>
      ) : null}
    </LogRow>
  )
}

interface IncidentListProps {
  readonly incidents: readonly IncidentView[]
  /** For the head coach: clears one. */
  readonly clear: Clearing | null
}

/** Open incidents with what they pause and how they are cleared; cleared ones folded away. */
export function IncidentList({ incidents, clear }: IncidentListProps) {
  const [open, cleared] = [incidents.filter((one) => !one.cleared), incidents.filter((one) => one.cleared)]
  return (
    <>
      <ul>
        {open.map((incident) => (
          <IncidentRow key={incident.id} incident={incident} clear={clear} />
        ))}
      </ul>
      {open.length === 0 ? (
        <LogRow>
          <Nothing>No incident is open. What happens on the deck is recorded there, or here.</Nothing>
        </LogRow>
      ) : null}
      {cleared.length > 0 ? (
        <LogRow>
          <Fold summary={`${cleared.length} cleared`}>
            <ul>
              {cleared.map((incident) => (
                <IncidentRow key={incident.id} incident={incident} clear={null} />
              ))}
            </ul>
          </Fold>
        </LogRow>
      ) : null}
    </>
  )
}

interface RecordFormProps {
  readonly action: FormAction
  readonly diver: string
  readonly today: string
  readonly time: string
  readonly pairs: readonly { readonly key: string; readonly name: string }[]
}

const kinds = ['contact with the board', 'too close', 'bad landing', 'knock to the head'] as const

/** An incident that was not recorded on the deck. */
export function RecordForm({ action, diver, today, time, pairs }: RecordFormProps) {
  return (
    <ActionForm action={action} submit="Record it" tone="plain" className="max-w-md" hidden={{ diver }}>
      <FormSelect label="What it was" name="what" required>
        <option value="">Choose</option>
        {kinds.map((kind) => (
          <option key={kind} value={kind}>
            {kind}
          </option>
        ))}
      </FormSelect>
      <FormSelect label="At what" name="pair" required>
        <option value="">Choose</option>
        {pairs.map(({ key, name }) => (
          <option key={key} value={key}>
            {name}
          </option>
        ))}
      </FormSelect>
      <div className="grid grid-cols-2 gap-4">
        <FormField label="Day" name="day" type="date" defaultValue={today} required />
        <FormField label="Time" name="time" type="time" defaultValue={time} required />
      </div>
      <FormTextArea label="Note" name="note" hint="What was seen. No diagnosis." />
    </ActionForm>
  )
}
