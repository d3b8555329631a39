'use client'

import { useActionState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { ErrorSummary } from '@/app/_components/ui/error-summary'
import { Field } from '@/app/_components/ui/field'

interface State {
  readonly message?: string
  readonly fields?: Readonly<Record<string, string>>
  readonly values?: Readonly<Record<string, string>>
}

interface SignInFormProps {
  readonly action: (previous: State, form: FormData) => Promise<State>
  readonly next: string
}

/** Address and password; what was typed stays, but for the password. */
export function SignInForm({ action, next }: SignInFormProps) {
  const [state, send, pending] = useActionState(action, {})
  const errors = Object.entries(state.fields ?? {}).map(([field, message]) => ({ field, message }))
  return (
    <form action={send} noValidate className="grid max-w-sm gap-4">
      {state.message ? (
        <ErrorSummary
          title={errors.length > 0 ? state.message : 'Not signed in'}
          errors={errors.length > 0 ? errors : [{ field: null, message: state.message }]}
        />
      ) : null}
      <input type="hidden" name="next" value={next} />
      <Field
        label="E-mail address"
        name="email"
        type="email"
        autoComplete="username"
        defaultValue={state.values?.email}
        error={state.fields?.email}
        required
      />
      <Field
        label="Password"
        name="password"
        type="password"
        autoComplete="current-password"
        error={state.fields?.password}
        required
      />
      <div>
        <Button tone="go" disabled={pending}>
          Sign in
        </Button>
      </div>
    </form>
  )
}
