'use client'

import { useActionState } from 'react'
import { FormField, FormSelect, FormTextArea } from '@/app/_components/ui/action-fields'
import { ActionContext } from '@/app/_components/ui/action-form'
import { Button } from '@/app/_components/ui/button'
import { ErrorSummary } from '@/app/_components/ui/error-summary'
import { Fold } from '@/app/_components/ui/fold'
import { matchAction } from '../[coach]/[day]/actions'
import type { SessionPage } from '../[coach]/[day]/loader'
import { ProposalList } from './proposal-list'

const lines =
  'https://clips.example/0012.mp4  clip 12\nhttps://clips.example/0013.mp4  17:42:05\nhttps://clips.example/0014.mp4  17:44:10-17:44:35'

const forms =
  'The link, a space or a tab, then one of: clip 12 · the time of day at which it begins, 17:42:05 · from and to, 17:44:10-17:44:35 · number and time. A link may end with its own part, #t=12,15.'

function CameraClock({ session }: { session: SessionPage }) {
  return (
    <div className="grid gap-4 sm:grid-cols-2">
      <FormSelect label="The camera’s clock" name="clock" defaultValue="find">
        <option value="find">found out from the clips</option>
        <option value="right">was right</option>
        <option value="behind">was behind (slow)</option>
        <option value="ahead">was ahead (fast)</option>
      </FormSelect>
      <FormField
        label="Off by"
        name="off"
        hint="Minutes, or minutes and seconds: 3:20."
        autoComplete="off"
        defaultValue=""
      />
      <FormSelect label="One clip that you know shows" name="knownAttempt" defaultValue="">
        <option value="">none is known</option>
        {session.rows.map(({ attempt, time, who, name }) => (
          <option key={attempt} value={attempt}>
            {time} {who}, {name}
          </option>
        ))}
      </FormSelect>
      <FormField label="It stands on line" name="knownLine" inputMode="numeric" autoComplete="off" defaultValue="" />
    </div>
  )
}

/** A list of clips, what is proposed for it, and the button that links what the coach confirms. Works without JavaScript. */
export function MatchForm({ session }: { session: SessionPage }) {
  const [state, send, pending] = useActionState(matchAction, {})
  const errors = Object.entries(state.fields ?? {}).map(([field, message]) => ({ field, message }))
  const { proposal } = state
  const wrongClock = state.fields !== undefined && !state.fields.lines
  const clockOpen = wrongClock || proposal?.clockUnknown === true || (state.values?.clock ?? 'find') !== 'find'
  return (
    <ActionContext value={{ state, prefix: '' }}>
      <form action={send} noValidate className="grid max-w-2xl gap-4">
        {state.message ? (
          <ErrorSummary
            title={errors.length > 0 ? state.message : 'Nothing was linked'}
            errors={errors.length > 0 ? errors : [{ field: null, message: state.message }]}
          />
        ) : null}
        <input type="hidden" name="coach" value={session.coach} />
        <input type="hidden" name="day" value={session.day} />
        <FormTextArea
          label="Clips, one a line"
          name="lines"
          hint={forms}
          rows={proposal ? 5 : 9}
          placeholder={lines}
          spellCheck={false}
        />
        <Fold key={String(clockOpen)} summary="How the camera’s clock was" open={clockOpen}>
          <CameraClock session={session} />
        </Fold>
        <div>
          <Button name="do" value="propose" tone={proposal ? 'plain' : 'go'} disabled={pending}>
            {proposal ? 'Propose again' : 'Propose'}
          </Button>
        </div>
        {proposal ? (
          <>
            <input type="hidden" name="proposed" value={proposal.lines} />
            <ProposalList proposal={proposal} />
            <div>
              <Button name="do" value="link" tone="go" disabled={pending}>
                Link what is chosen
              </Button>
            </div>
          </>
        ) : null}
      </form>
    </ActionContext>
  )
}
