import type { Metadata } from 'next'
import { PageFrame } from '@/app/_components/frame/page-frame'
import { FormSelect } from '@/app/_components/ui/action-fields'
import { ActionForm } from '@/app/_components/ui/action-form'
import { Fold } from '@/app/_components/ui/fold'
import { Nothing, Notice } from '@/app/_components/ui/notice'
import { LogRow, PageHead, Section } from '@/app/_components/ui/sheet'
import { signOutAction } from '@/app/account/actions'
import { loadFrame } from '@/app/loader'
import { leaveAction, proposeAction } from './actions'
import { loadMoving, type MovingPage } from './loader'

export const metadata: Metadata = { title: 'Moving' }

interface MovingPageProps {
  readonly params: Promise<{ diver: string }>
}

function Proposal({ page }: { page: MovingPage }) {
  if (page.open !== null)
    return (
      <Notice>
        A transfer to {page.open} is open. <a href="/desk/transfers">See the transfers.</a>
      </Notice>
    )
  if (page.others.length === 0) return <Nothing>The programme has no other club.</Nothing>
  return (
    <ActionForm
      action={proposeAction}
      submit="Propose it"
      refused="Not proposed"
      className="max-w-sm"
      hidden={{ diver: page.id }}
    >
      <FormSelect label="To" name="to" hint="Its head coach reads the name now, and the record once agreed.">
        {page.others.map(({ id, name }) => (
          <option key={id} value={id}>
            {name}
          </option>
        ))}
      </FormSelect>
    </ActionForm>
  )
}

export default async function MovingDiverPage({ params }: MovingPageProps) {
  const frame = await loadFrame()
  const page = await loadMoving((await params).diver)
  return (
    <PageFrame frame={frame} current="/desk/divers" signOut={signOutAction}>
      <PageHead sentence={`${page.name} moves on, and the record goes along.`} margin="Moving">
        <a href={`/desk/divers/${page.id}`}>{page.name}</a> · {page.clubName}
      </PageHead>
      <Section title="To another club" aside="Both head coaches agree.">
        <LogRow>
          <Proposal page={page} />
        </LogRow>
      </Section>
      <Section title="Leaves without a new club">
        <LogRow>
          <p className="measure pb-3">
            {page.name} leaves the squads of {page.clubName} today. Nobody reads the record then, until you take the
            diver back or another club asks you.
          </p>
          <Fold summary="Leave the club">
            <ActionForm
              action={leaveAction}
              submit={`${page.name} leaves the club`}
              tone="stop"
              prefix="leave-"
              hidden={{ diver: page.id }}
            />
          </Fold>
        </LogRow>
      </Section>
    </PageFrame>
  )
}
