'use client'

import { createContext, type ReactNode, useActionState } from 'react'
import { Button, type ButtonTone } from './button'
import { ErrorSummary } from './error-summary'
import { Notice } from './notice'

/** What an action answers: a message, errors at their fields, what had been typed, and what is shown this once. */
export interface ActionState {
  readonly message?: string
  readonly done?: boolean
  readonly fields?: Readonly<Record<string, string>>
  readonly values?: Readonly<Record<string, string>>
  readonly made?: string
}

export type FormAction = (previous: ActionState, form: FormData) => Promise<ActionState>

/** The answer, and the prefix that tells the fields of two forms on one page apart. */
export const ActionContext = createContext<{ readonly state: ActionState; readonly prefix: string }>({
  state: {},
  prefix: '',
})

interface ActionFormProps {
  readonly action: FormAction
  readonly submit: string
  readonly tone?: ButtonTone
  /** Heads a refusal that belongs to no field. */
  readonly refused?: string
  /** Where one page has several forms: tells their fields apart. */
  readonly prefix?: string
  readonly className?: string
  /** What is sent along unseen. */
  readonly hidden?: Readonly<Record<string, string>>
  readonly children?: ReactNode
}

function Answer({ state, refused, prefix }: { state: ActionState; refused: string; prefix: string }) {
  if (!state.message) return null
  if (state.done)
    return (
      <Notice tone="kept">
        <p>{state.message}</p>
        {state.made ? <p className="mt-1 font-bold break-all select-all">{state.made}</p> : null}
      </Notice>
    )
  const errors = Object.entries(state.fields ?? {}).map(([field, message]) => ({ field: prefix + field, message }))
  return (
    <ErrorSummary
      title={errors.length > 0 ? state.message : refused}
      errors={errors.length > 0 ? errors : [{ field: null, message: state.message }]}
    />
  )
}

/** A form around a server action: works without JavaScript, keeps what was typed, says what happened. */
export function ActionForm(props: ActionFormProps) {
  const { action, submit, tone = 'go', refused = 'Nothing was saved', prefix = '', className = '', hidden = {} } = props
  const [state, send, pending] = useActionState(action, {})
  return (
    <ActionContext value={{ state, prefix }}>
      <form action={send} noValidate className={`grid gap-4 ${className}`}>
        <Answer state={state} refused={refused} prefix={prefix} />
        {Object.entries(hidden).map(([name, value]) => (
          <input key={name} type="hidden" name={name} value={value} />
        ))}
        {props.children}
        <div>
          <Button tone={tone} disabled={pending}>
            {submit}
          </Button>
        </div>
      </form>
    </ActionContext>
  )
}
