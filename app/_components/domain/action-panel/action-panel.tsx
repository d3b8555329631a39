'use client'

import { useActionState } from 'react'
import { Caution } from '@/app/_components/domain/caution/caution'
import type { ActionState, FormAction } from '@/app/_components/ui/action-form'
import { Button } from '@/app/_components/ui/button'
import { CheckField, CheckGroup } from '@/app/_components/ui/check-field'
import { ErrorSummary } from '@/app/_components/ui/error-summary'
import { Field, TextAreaField } from '@/app/_components/ui/field'

/** One question of a form: some words, or a choice of one or of several. */
export type Ask =
  | {
      /** `line` is answered in one line. */
      readonly kind: 'words' | 'line'
      readonly name: string
      readonly label: string
      readonly hint?: string
      readonly required?: boolean
    }
  | {
      /** `several` are sent as `NAME:VALUE`, a box each. */
      readonly kind: 'one' | 'several'
      readonly name: string
      readonly legend: string
      readonly choices: readonly { readonly value: string; readonly label: string }[]
    }

/** Something that can be done about a line, as plain data: its key, its words, what it sends and what it asks. */
export interface PanelAction {
  /** The one key that opens it. */
  readonly shortcut: string
  readonly label: string
  readonly send: string
  readonly refused: string
  readonly tone: 'go' | 'plain' | 'stop'
  readonly note?: string
  /** What is decided here can hurt someone. */
  readonly caution?: 'move' | 'dive'
  readonly sends: Readonly<Record<string, string>>
  readonly asks: readonly Ask[]
}

interface ActionPanelProps {
  readonly action: FormAction
  /** Tells this panel's fields from those of others on the page. */
  readonly id: string
  readonly panel: PanelAction
  /** `bar`: the form opens above the bar that stays; `line`: below its button, in a list. */
  readonly place: 'bar' | 'line'
}

function Question({ ask, id, state }: { ask: Ask; id: string; state: ActionState }) {
  if ('label' in ask) {
    const { label, hint, required, name } = ask
    const said = { error: state.fields?.[name], defaultValue: state.values?.[name] }
    const field = { label, hint, required, name, id: `${id}-${name}`, ...said }
    return ask.kind === 'line' ? <Field {...field} autoComplete="off" /> : <TextAreaField {...field} />
  }
  const chosen = (value: string): boolean =>
    ask.kind === 'one' ? state.values?.[ask.name] === value : state.values?.[`${ask.name}:${value}`] !== undefined
  return (
    <CheckGroup legend={ask.legend} error={state.fields?.[ask.name]}>
      {ask.choices.map(({ value, label }) => (
        <CheckField
          // A form that comes back is put to its defaults: to what was chosen, which is then drawn anew.
          key={`${value} ${chosen(value)}`}
          defaultChecked={chosen(value)}
          label={label}
          {...(ask.kind === 'one'
            ? { type: 'radio', name: ask.name, value, required: true }
            : { name: `${ask.name}:${value}` })}
        />
      ))}
    </CheckGroup>
  )
}

/** A button that opens its form: by mouse, by its key in a list, and without JavaScript. One is open at a time. */
export function ActionPanel({ action, id, panel, place }: ActionPanelProps) {
  const [state, send, pending] = useActionState(action, {})
  return (
    <details name="panel" className={`action-panel action-panel-${place}`} open={state.message ? true : undefined}>
      <summary className={panel.tone === 'go' ? 'button button-go' : 'button'} data-shortcut={panel.shortcut}>
        {panel.label}
        {place === 'line' ? (
          <span className="key" aria-hidden="true">
            {panel.shortcut}
          </span>
        ) : null}
      </summary>
      <form action={send} className="action-form">
        {Object.entries(panel.sends).map(([name, value]) => (
          <input key={name} type="hidden" name={name} value={value} />
        ))}
        {state.message ? (
          <ErrorSummary title={panel.refused} errors={[{ field: null, message: state.message }]} />
        ) : null}
        {panel.note ? <p>{panel.note}</p> : null}
        {panel.caution && place === 'line' ? <Caution about={panel.caution} /> : null}
        {panel.asks.map((ask) => (
          <Question key={ask.name} ask={ask} id={id} state={state} />
        ))}
        <div>
          <Button tone={panel.tone} disabled={pending}>
            {panel.send}
          </Button>
        </div>
      </form>
    </details>
  )
}
