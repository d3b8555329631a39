'use client'

import { useActionState } from 'react'
import { ExemplarList, type ExemplarView } from '@/app/_components/domain/clip/exemplar-list'
import { FormTick } from '@/app/_components/ui/action-fields'
import { ActionContext } from '@/app/_components/ui/action-form'
import { Button } from '@/app/_components/ui/button'
import { CheckGroup } from '@/app/_components/ui/check-field'
import { ErrorSummary } from '@/app/_components/ui/error-summary'
import { RatingChoice } from '@/app/_components/ui/rating-choice'

interface State {
  readonly message?: string
  readonly values?: Readonly<Record<string, string>>
}

interface Criterion {
  readonly key: string
  readonly title: string
  readonly statement: string
  readonly critical: boolean
  readonly expected: 0 | 1 | 2 | 3 | 4
  readonly anchors: readonly string[]
  readonly exemplars: readonly ExemplarView[]
  readonly measured: readonly string[]
}

interface LookFormProps {
  readonly action: (previous: State, form: FormData) => Promise<State>
  readonly attempt: string
  readonly phases: readonly { readonly phase: string; readonly criteria: readonly Criterion[] }[]
  readonly faults: readonly {
    readonly key: string
    readonly seen: string
    readonly exemplars: readonly ExemplarView[]
  }[]
}

const faces: Readonly<Record<string, 0 | 1 | 2 | 3 | 4>> = { '0': 0, '1': 1, '2': 2, '3': 3, '4': 4 }

function CriterionField({ criterion, typed }: { criterion: Criterion; typed: State['values'] }) {
  const name = `rate:${criterion.key}`
  const { title, statement, critical, expected, anchors, exemplars, measured } = criterion
  return (
    <div className={critical ? 'border-l-4 border-ink pl-3' : ''}>
      <p className="font-bold">
        {title}
        {critical ? <span className="font-normal text-soft"> · must be rated</span> : null}
      </p>
      <p className="measure pb-1 text-13 text-soft">{statement}</p>
      <RatingChoice
        name={name}
        legend={title}
        value={faces[typed?.[name] ?? ''] ?? null}
        expected={expected}
        anchors={anchors}
      />
      {measured.map((said) => (
        <p key={said} className="pt-1 text-13">
          Your measure: {said}.
        </p>
      ))}
      <ExemplarList exemplars={exemplars} />
    </div>
  )
}

/** A rating by exception, phase by phase; works without JavaScript. Nothing of what anybody else rated is on this page. */
export function LookForm({ action, attempt, phases, faults }: LookFormProps) {
  const [state, send, pending] = useActionState(action, {})
  return (
    <ActionContext value={{ state, prefix: '' }}>
      <form action={send} className="grid max-w-xl gap-6">
        <input type="hidden" name="attempt" value={attempt} />
        {state.message ? <ErrorSummary title="Not kept" errors={[{ field: null, message: state.message }]} /> : null}
        {phases.map(({ phase, criteria }) => (
          <fieldset key={phase} className="grid gap-4">
            <legend className="pb-2 text-18 font-bold first-letter:uppercase">{phase}</legend>
            {criteria.map((criterion) => (
              <CriterionField key={criterion.key} criterion={criterion} typed={state.values} />
            ))}
          </fieldset>
        ))}
        {faults.length > 0 ? (
          <CheckGroup legend="Faults seen">
            {faults.map(({ key, seen, exemplars }) => (
              <div key={key}>
                <FormTick name={`fault:${key}`} label={seen} />
                <ExemplarList exemplars={exemplars} />
              </div>
            ))}
          </CheckGroup>
        ) : null}
        <CheckGroup legend="The rest">
          <FormTick name="rest" label="As expected: what is not critical and not rated was as the level asks" />
          <FormTick name="unseen" label="The video does not show the critical criteria that I left blank" />
        </CheckGroup>
        <div>
          <Button tone="go" disabled={pending}>
            Keep what I saw
          </Button>
        </div>
      </form>
    </ActionContext>
  )
}
