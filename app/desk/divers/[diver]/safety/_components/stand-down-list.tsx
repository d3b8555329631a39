import { FormField, FormSelect, FormTextArea } from '@/app/_components/ui/action-fields'
import { ActionForm, type FormAction } from '@/app/_components/ui/action-form'
import { Fold } from '@/app/_components/ui/fold'
import { Nothing } from '@/app/_components/ui/notice'
import { LogRow } from '@/app/_components/ui/sheet'
import type { StandDownView } from '../loader'

interface StandDownListProps {
  readonly standDowns: readonly StandDownView[]
  /** For the head coach: ends one. */
  readonly end: { readonly action: FormAction; readonly diver: string; readonly today: string } | null
}

function StandDownRow({ one, end }: { one: StandDownView; end: StandDownListProps['end'] }) {
  return (
    <LogRow as="li" margin={one.standing}>
      <h3 className="font-bold">{one.title}</h3>
      <p>{one.span}</p>
      <p className="text-soft">{one.by}</p>
      {one.reason ? <p className="measure">“{one.reason}” (head coaches of the club only)</p> : null}
      {end && one.endable ? (
        <Fold summary="End it">
          <ActionForm
            action={end.action}
            submit="End the stand-down"
            refused="Not ended"
            prefix={`${one.id}-`}
            className="max-w-md"
            hidden={{ diver: end.diver, standDown: one.id }}
          >
            <FormField
              label="Free again from"
              name="freeFrom"
              type="date"
              defaultValue={end.today}
              hint="It is ended once. Follow medical advice and the rules of the governing body."
              required
            />
          </ActionForm>
        </Fold>
      ) : null}
    </LogRow>
  )
}

/** Stand-downs in force and to come; what is over is folded away. */
export function StandDownList({ standDowns, end }: StandDownListProps) {
  const [now, over] = [
    standDowns.filter(({ standing }) => standing !== 'over'),
    standDowns.filter(({ standing }) => standing === 'over'),
  ]
  return (
    <>
      <ul>
        {now.map((one) => (
          <StandDownRow key={one.id} one={one} end={end} />
        ))}
      </ul>
      {now.length === 0 ? (
        <LogRow>
          <Nothing>No stand-down is in force.</Nothing>
        </LogRow>
      ) : null}
      {over.length > 0 ? (
        <LogRow>
          <Fold summary={`${over.length} over`}>
            <ul>
              {over.map((one) => (
                <StandDownRow key={one.id} one={one} end={null} />
              ))}
            </ul>
          </Fold>
        </LogRow>
      ) : null}
    </>
  )
}

/** Stands a diver down; everybody learns from what, only head coaches why. */
export function StandDownForm({ action, diver, today }: { action: FormAction; diver: string; today: string }) {
  return (
    <ActionForm
      action={action}
      submit="Stand down"
      refused="Not stood down"
      tone="stop"
      prefix="stand-"
      className="max-w-md"
      hidden={{ diver }}
    >
      <FormSelect label="Kept from" name="closes" required>
        <option value="water">the water</option>
        <option value="boards">the boards</option>
        <option value="new">anything new</option>
      </FormSelect>
      <div className="grid grid-cols-2 items-end gap-4">
        <FormField label="From" name="from" type="date" defaultValue={today} required />
        <FormField label="Last day" name="until" type="date" hint="Empty: until it is ended." />
      </div>
      <FormTextArea
        label="Why"
        name="reason"
        hint="Only head coaches of the club read it: no assistant, no reviewer, no guardian. It may stay unsaid."
      />
    </ActionForm>
  )
}
