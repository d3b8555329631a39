import { FormField, FormSelect } from '@/app/_components/ui/action-fields'
import { ActionForm } from '@/app/_components/ui/action-form'
import { LogRow, Section } from '@/app/_components/ui/sheet'
import { InvitationList } from '@/app/desk/people/_components/invitation-list'
import { InviteForm } from '@/app/desk/people/_components/invite-form'
import { withdrawAction } from '@/app/desk/people/actions'
import { addClubAction } from '../actions'
import type { ClubsPage } from '../loader'

/** What the programme lead adds: clubs, their head coaches, people of the programme. */
export function LeadForms({ page }: { page: ClubsPage }) {
  return (
    <>
      <Section title="Add a club">
        <LogRow>
          <ActionForm action={addClubAction} submit="Add the club" className="max-w-sm" prefix="club-">
            <FormField label="Name" name="name" />
            <FormField label="Time zone" name="zone" defaultValue={page.zone} hint="In which its days are counted." />
          </ActionForm>
        </LogRow>
      </Section>
      <Section title="Invite a head coach">
        <LogRow>
          <InviteForm prefix="head-" hidden={{ role: 'head' }}>
            <FormSelect label="Club" name="club">
              {page.clubs.map(({ id, name }) => (
                <option key={id} value={id}>
                  {name}
                </option>
              ))}
            </FormSelect>
          </InviteForm>
        </LogRow>
      </Section>
      <Section title="Invite to the programme">
        <LogRow>
          <InviteForm prefix="programme-">
            <FormSelect label="As" name="role" defaultValue="reviewer">
              <option value="reviewer">reviewer: reads all clubs</option>
              <option value="lead">lead: keeps the curriculum and the clubs</option>
            </FormSelect>
          </InviteForm>
        </LogRow>
      </Section>
      <Section title="Links that are open">
        <InvitationList invitations={page.invitations} withdraw={withdrawAction} />
      </Section>
    </>
  )
}
