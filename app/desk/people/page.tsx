import type { Metadata } from 'next'
import { PageFrame } from '@/app/_components/frame/page-frame'
import { FormSelect } from '@/app/_components/ui/action-fields'
import { ActionForm } from '@/app/_components/ui/action-form'
import { Notice } from '@/app/_components/ui/notice'
import { Beside, LogRow, PageHead, Section } from '@/app/_components/ui/sheet'
import { signOutAction } from '@/app/account/actions'
import { loadFrame } from '@/app/loader'
import { ClubChoice } from './_components/club-choice'
import { InvitationList } from './_components/invitation-list'
import { InviteForm } from './_components/invite-form'
import { venueAction, withdrawAction } from './actions'
import { loadPeople, type PeoplePage } from './loader'

export const metadata: Metadata = { title: 'People' }

interface PeoplePageProps {
  readonly searchParams: Promise<Record<string, string | string[] | undefined>>
}

const doneWords: Readonly<Record<string, string>> = {
  scope: 'Kept: it holds for what is rated and signed from now on.',
  ended: 'The post is ended, and the ledger says so. What was seen and signed stays.',
  venue: 'Kept: what the divers are ready for follows.',
}

function Coach({ coach }: { coach: PeoplePage['coaches'][number] }) {
  return (
    <LogRow as="li" margin={coach.role}>
      <div className="flex flex-wrap items-baseline justify-between gap-x-6">
        <span>
          <b>{coach.name}</b>
          <span className="text-soft">
            {' '}
            · since {coach.since} · judges {coach.judges}
          </span>
        </span>
        {coach.href ? (
          <a href={coach.href}>
            Change or end<span className="sr-only"> of the post of {coach.name}</span>
          </a>
        ) : null}
      </div>
    </LogRow>
  )
}

export default async function PeopleOfClubPage({ searchParams }: PeoplePageProps) {
  const { club, done } = await searchParams
  const frame = await loadFrame()
  const page = await loadPeople(club)
  const said = typeof done === 'string' ? doneWords[done] : undefined
  return (
    <PageFrame frame={frame} current="/desk/people" signOut={signOutAction}>
      <PageHead sentence={`Who coaches at ${page.club.clubName}, and what each may judge.`} margin="People" />
      <ClubChoice choice={page.choice} />
      {said ? (
        <Beside>
          <Notice tone="kept">{said}</Notice>
        </Beside>
      ) : null}
      <Section title="Coaches">
        <ul>
          {page.coaches.map((coach) => (
            <Coach key={coach.id} coach={coach} />
          ))}
        </ul>
      </Section>
      <Section title="Invite an assistant coach" aside="Head coaches are invited by the programme.">
        <LogRow>
          <InviteForm hidden={{ role: 'assistant', club: page.club.club }} />
        </LogRow>
      </Section>
      <Section title="Links that are open">
        <InvitationList invitations={page.invitations} withdraw={withdrawAction} />
      </Section>
      <Section title="Boards">
        <LogRow margin={page.has3m === null ? 'not said yet' : ''}>
          <ActionForm
            action={venueAction}
            submit="Keep"
            tone="plain"
            prefix="venue-"
            className="max-w-sm"
            hidden={{ club: page.club.club }}
          >
            <FormSelect
              label="The club has a 3 m board"
              name="has"
              defaultValue={page.has3m === null ? '' : page.has3m ? 'yes' : 'no'}
            >
              {page.has3m === null ? <option value="">choose</option> : null}
              <option value="yes">yes</option>
              <option value="no">no</option>
            </FormSelect>
          </ActionForm>
        </LogRow>
      </Section>
    </PageFrame>
  )
}
