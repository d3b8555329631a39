'use client'

import { useActionState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { CheckField, CheckGroup } from '@/app/_components/ui/check-field'
import { ErrorSummary } from '@/app/_components/ui/error-summary'
import { TextAreaField } from '@/app/_components/ui/field'

interface State {
  readonly message?: string
  readonly fields?: Readonly<Record<string, string>>
  readonly values?: Readonly<Record<string, string>>
}

type Outcome = 'approve' | 'override' | 'return' | 'withdraw'

interface DecisionBarProps {
  readonly action: (previous: State, form: FormData) => Promise<State>
  readonly diver: string
  readonly target: string
  readonly isMove: boolean
  readonly alone: boolean
  readonly can: readonly Outcome[]
  readonly pairs: readonly { readonly key: string; readonly name: string }[]
}

const openWords: Record<Outcome, string> = {
  approve: 'Approve…',
  override: 'Approve by override…',
  return: 'Return…',
  withdraw: 'Withdraw…',
}
const sendWords: Record<Outcome, string> = {
  approve: 'Approve',
  override: 'Approve by override',
  return: 'Return with this reason',
  withdraw: 'Withdraw with this reason',
}
const reasonHints: Record<Exclude<Outcome, 'approve'>, string> = {
  override: 'Only age can be waived. What rests on this will say “by override”.',
  return: 'What you want to see. It comes back with a new clean attempt at one of the skills ticked.',
  withdraw: 'It earns no credit from now on; the record keeps both decisions.',
}

function Panel(props: Omit<DecisionBarProps, 'can'> & { outcome: Outcome }) {
  const { action, outcome, pairs, isMove, alone } = props
  const [state, send, pending] = useActionState(action, {})
  const deciding = outcome === 'approve' || outcome === 'override'
  const field = (name: string) => ({
    name,
    id: `${outcome}-${name}`,
    error: state.fields?.[name],
    defaultValue: state.values?.[name],
  })
  return (
    <details name="decision" className="decision-panel" open={state.message ? true : undefined}>
      <summary className={outcome === 'approve' ? 'button button-go' : 'button'}>{openWords[outcome]}</summary>
      <form action={send} className="decision-form">
        <input type="hidden" name="diver" value={props.diver} />
        <input type="hidden" name="target" value={props.target} />
        <input type="hidden" name="outcome" value={outcome} />
        {state.message ? (
          <ErrorSummary title="Nothing was decided" errors={[{ field: null, message: state.message }]} />
        ) : null}
        {deciding && isMove ? (
          <CheckGroup legend="What does the diver want?">
            <CheckField type="radio" name="diverWants" value="yes" label="Yes, she wants to move up" required />
            <CheckField
              type="radio"
              name="diverWants"
              value="not yet"
              label="Not yet: approved, and the diver chooses when"
            />
          </CheckGroup>
        ) : null}
        {deciding && alone ? (
          <TextAreaField
            label="Why was no other coach there?"
            hint="You are the only coach in the evidence; the record says why."
            {...field('onlyCoach')}
          />
        ) : null}
        {outcome === 'return' ? (
          <CheckGroup legend="Wants more of">
            {pairs.map((pair) => (
              <CheckField key={pair.key} name="wantsMoreOf" value={pair.key} label={pair.name} />
            ))}
          </CheckGroup>
        ) : null}
        {outcome === 'approve' ? null : (
          <TextAreaField label="Reason" hint={reasonHints[outcome]} required {...field('reason')} />
        )}
        <div>
          <Button tone={deciding ? 'go' : 'plain'} disabled={pending}>
            {sendWords[outcome]}
          </Button>
        </div>
      </form>
    </details>
  )
}

/** The bar that stays: one panel a way to decide, of which one is open at a time. */
export function DecisionBar({ can, ...rest }: DecisionBarProps) {
  return (
    <div className="decision-bar">
      <div className="frame flex flex-wrap gap-3">
        {can.map((outcome) => (
          <Panel key={outcome} outcome={outcome} {...rest} />
        ))}
      </div>
    </div>
  )
}
