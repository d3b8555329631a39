import { FormField, FormSelect } from '@/app/_components/ui/action-fields'
import { ActionForm } from '@/app/_components/ui/action-form'
import { Nothing } from '@/app/_components/ui/notice'
import { Beside, LogRow } from '@/app/_components/ui/sheet'
import { agreeAction, askAction, endAction } from '../actions'
import type { TransfersPage, TransferView } from '../loader'

function Options({ from }: { from: readonly { readonly id: string; readonly name: string }[] }) {
  return from.map(({ id, name }) => (
    <option key={id} value={id}>
      {name}
    </option>
  ))
}

/** A transfer that wants this head coach's word: whom is meant, agree, decline. */
export function ToAnswer({ transfer }: { transfer: TransferView }) {
  return (
    <LogRow as="li" margin={transfer.day}>
      <p className="pb-3 font-bold">{transfer.sentence}</p>
      <div className="flex flex-wrap items-end gap-x-6 gap-y-3">
        <ActionForm
          action={agreeAction}
          submit="Agree"
          refused="Not agreed"
          prefix={`${transfer.id}-`}
          hidden={{ transfer: transfer.id }}
        >
          {transfer.candidates ? (
            <FormSelect label="Who is meant" name="diver" defaultValue="">
              <option value="">choose your diver</option>
              <Options from={transfer.candidates} />
            </FormSelect>
          ) : null}
        </ActionForm>
        <ActionForm
          action={endAction}
          submit="Decline"
          tone="plain"
          prefix={`end-${transfer.id}-`}
          hidden={{ transfer: transfer.id }}
        />
      </div>
    </LogRow>
  )
}

/** A transfer that waits for the other club. */
export function Waiting({ transfer }: { transfer: TransferView }) {
  return (
    <LogRow as="li" margin={transfer.day}>
      <div className="flex flex-wrap items-start justify-between gap-3">
        <span>{transfer.sentence}</span>
        <ActionForm
          action={endAction}
          submit="Take back"
          tone="text"
          prefix={`end-${transfer.id}-`}
          hidden={{ transfer: transfer.id }}
        />
      </div>
    </LogRow>
  )
}

/** Asks another club for a diver: by name, since this club does not see its divers. */
export function AskForm({ page }: { page: TransfersPage }) {
  const [only] = page.mine
  if (page.others.length === 0 || !only)
    return (
      <Beside>
        <Nothing>The programme has no other club.</Nothing>
      </Beside>
    )
  return (
    <LogRow>
      <ActionForm
        action={askAction}
        submit="Ask"
        refused="Not asked"
        className="max-w-sm"
        prefix="ask-"
        hidden={page.mine.length === 1 ? { to: only.id } : {}}
      >
        {page.mine.length > 1 ? (
          <FormSelect label="To" name="to">
            <Options from={page.mine} />
          </FormSelect>
        ) : null}
        <FormSelect label="From" name="from">
          <Options from={page.others} />
        </FormSelect>
        <FormField label="Given and family name" name="name" />
        <FormField label="Birth date" name="born" type="date" hint="If two share a name." />
      </ActionForm>
    </LogRow>
  )
}
