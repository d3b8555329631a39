import { FormSelect } from '@/app/_components/ui/action-fields'
import { ActionForm, type FormAction } from '@/app/_components/ui/action-form'
import { Fold } from '@/app/_components/ui/fold'
import { LogRow, Section } from '@/app/_components/ui/sheet'
import type { NamingView } from '../exemplar/loader'

interface ExemplarFormProps {
  readonly naming: NamingView
  readonly name: FormAction
  readonly withdraw: FormAction
}

function NameForm({ naming, name }: Pick<ExemplarFormProps, 'naming' | 'name'>) {
  return (
    <ActionForm action={name} submit="Name it as an exemplar" className="max-w-md" hidden={{ moment: naming.moment }}>
      <FormSelect label="What it shows" name="shows" required>
        <option value="">Choose…</option>
        {naming.shows.map(({ phase, choices }) => (
          <optgroup key={phase} label={phase}>
            {choices.map(({ value, label }) => (
              <option key={value} value={value}>
                {label}
              </option>
            ))}
          </optgroup>
        ))}
      </FormSelect>
      <FormSelect label="As which level asks it" name="level" hint="A fault is shown at every level.">
        {naming.levels.map(({ value, label }) => (
          <option key={value} value={value}>
            {label}
          </option>
        ))}
      </FormSelect>
    </ActionForm>
  )
}

/** For the head coach: what the moment is named as showing, the way to take that back, and to name it. */
export function ExemplarForm({ naming, name, withdraw }: ExemplarFormProps) {
  const { moment, consented, consentHref, guideHref, named } = naming
  return (
    <Section title="As an exemplar" aside={<a href={guideHref}>The guide of this skill</a>}>
      {named.map(({ id, as }) => (
        <LogRow key={id} margin="named">
          <p className="pb-1">{as}</p>
          <Fold summary="Withdraw it">
            <ActionForm
              action={withdraw}
              submit="Withdraw the exemplar"
              tone="stop"
              refused="Nothing was withdrawn"
              hidden={{ moment, exemplar: id }}
            />
          </Fold>
        </LogRow>
      ))}
      <LogRow>
        {consented ? (
          <NameForm naming={naming} name={name} />
        ) : (
          <p className="measure">
            A moment is shown as an example, in guides and beside the ratings, only with a consent of its own and one to
            video. <a href={consentHref}>Record the consent</a>
          </p>
        )}
      </LogRow>
    </Section>
  )
}
