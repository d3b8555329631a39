import type { Metadata } from 'next'
import { PageFrame } from '@/app/_components/frame/page-frame'
import { FormField, FormTick } from '@/app/_components/ui/action-fields'
import { ActionForm } from '@/app/_components/ui/action-form'
import { CheckGroup } from '@/app/_components/ui/check-field'
import { Nothing } from '@/app/_components/ui/notice'
import { LogRow, PageHead } from '@/app/_components/ui/sheet'
import { signOutAction } from '@/app/account/actions'
import { loadFrame } from '@/app/loader'
import { loadSquad } from '../loader'
import { keepSquadAction } from './actions'

export const metadata: Metadata = { title: 'Squad' }

interface SquadPageProps {
  readonly params: Promise<{ squad: string }>
}

export default async function OneSquadPage({ params }: SquadPageProps) {
  const frame = await loadFrame()
  const page = await loadSquad((await params).squad)
  return (
    <PageFrame frame={frame} current="/desk/squads" signOut={signOutAction}>
      <PageHead sentence={`${page.name}: who is in it.`} margin="Squad">
        {page.clubName}
      </PageHead>
      <LogRow>
        <ActionForm action={keepSquadAction} submit="Keep the squad" className="max-w-2xl" hidden={{ squad: page.id }}>
          <div className="max-w-sm">
            <FormField label="Name" name="name" defaultValue={page.name} />
          </div>
          <CheckGroup legend="In it">
            {page.divers.length === 0 ? <Nothing>No diver yet: enter them from the squads page.</Nothing> : null}
            <div className="grid sm:grid-cols-2 lg:grid-cols-3">
              {page.divers.map(({ id, name, chosen }) => (
                <FormTick key={id} name={`diver:${id}`} label={name} defaultChecked={chosen} />
              ))}
            </div>
          </CheckGroup>
        </ActionForm>
      </LogRow>
    </PageFrame>
  )
}
