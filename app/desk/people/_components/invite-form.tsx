import type { ReactNode } from 'react'
import { FormField } from '@/app/_components/ui/action-fields'
import { ActionForm } from '@/app/_components/ui/action-form'
import { inviteAction } from '../actions'

interface InviteFormProps {
  /** Tells its fields from those of another form on the page. */
  readonly prefix?: string
  /** Role and club, where they are not chosen. */
  readonly hidden?: Readonly<Record<string, string>>
  /** What is chosen before it is said for whom. */
  readonly children?: ReactNode
}

/** Makes a link that invites to a post or a role. */
export function InviteForm({ prefix, hidden, children }: InviteFormProps) {
  return (
    <ActionForm
      action={inviteAction}
      submit="Make the link"
      refused="No link was made"
      className="max-w-sm"
      prefix={prefix}
      hidden={hidden}
    >
      {children}
      <FormField label="For whom" name="label" hint="For your own list; the link itself does not say it." />
    </ActionForm>
  )
}
