'use client'

import { useActionState } from 'react'
import { FormSelect, FormTextArea, FormTick } from '@/app/_components/ui/action-fields'
import { ActionContext, type FormAction } from '@/app/_components/ui/action-form'
import { Button } from '@/app/_components/ui/button'
import { CheckGroup } from '@/app/_components/ui/check-field'
import { ErrorSummary } from '@/app/_components/ui/error-summary'

interface SignFormProps {
  readonly action: FormAction
  readonly diver: string
  readonly pair: string
  readonly levels: readonly { readonly key: string; readonly title: string }[]
  /** The head coach waives in writing what an override may waive. */
  readonly override: boolean
}

const waivers = [
  { value: 'coaches', label: 'a second coach' },
  { value: 'days', label: 'a second day' },
  { value: 'moments', label: 'a moment on video' },
  { value: 'certainty', label: 'certainty' },
  { value: 'count', label: 'the count, down to two successes' },
]

/** The signature: level, and by override what is waived and why. */
export function SignForm({ action, diver, pair, levels, override }: SignFormProps) {
  const [state, send, pending] = useActionState(action, {})
  return (
    <ActionContext value={{ state, prefix: override ? 'override-' : '' }}>
      <form action={send} className="grid max-w-md gap-4">
        {state.message ? <ErrorSummary title="Not signed" errors={[{ field: null, message: state.message }]} /> : null}
        <input type="hidden" name="diver" value={diver} />
        <input type="hidden" name="pair" value={pair} />
        {levels.length > 1 ? (
          <FormSelect label="Level" name="level" defaultValue={levels[0]?.key ?? ''}>
            {levels.map((level) => (
              <option key={level.key} value={level.key}>
                {level.title}
              </option>
            ))}
          </FormSelect>
        ) : (
          <input type="hidden" name="level" value={levels[0]?.key} />
        )}
        {override ? (
          <>
            <CheckGroup legend="What you waive">
              {waivers.map((waiver) => (
                <FormTick key={waiver.value} name={`waive:${waiver.value}`} label={waiver.label} />
              ))}
            </CheckGroup>
            <FormTextArea
              label="Reason"
              name="reason"
              hint="What rests on this will say “by override”. A critical criterion is never waived."
              required
            />
          </>
        ) : null}
        <div>
          <Button tone={override ? 'plain' : 'go'} disabled={pending}>
            {override ? 'Sign by override' : 'Sign off'}
          </Button>
        </div>
      </form>
    </ActionContext>
  )
}
