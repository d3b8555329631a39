import { ActionForm, type FormAction } from '@/app/_components/ui/action-form'
import { Nothing } from '@/app/_components/ui/notice'
import { Beside, LogRow } from '@/app/_components/ui/sheet'

interface InvitationListProps {
  readonly invitations: readonly { readonly id: string; readonly label: string; readonly until: string }[]
  readonly withdraw: FormAction
}

/** Links that still open: for whom, until when, and how to take each back. */
export function InvitationList({ invitations, withdraw }: InvitationListProps) {
  if (invitations.length === 0)
    return (
      <Beside>
        <Nothing>No link is open.</Nothing>
      </Beside>
    )
  return (
    <ul>
      {invitations.map(({ id, label, until }) => (
        <LogRow key={id} as="li" margin={`to ${until}`}>
          <div className="flex flex-wrap items-start justify-between gap-3">
            <span>{label}</span>
            <ActionForm action={withdraw} submit="Take back" tone="text" prefix={id} hidden={{ invitation: id }} />
          </div>
        </LogRow>
      ))}
    </ul>
  )
}
