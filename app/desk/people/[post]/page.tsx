import type { Metadata } from 'next'
import { PageFrame } from '@/app/_components/frame/page-frame'
import { FormField, FormTick } from '@/app/_components/ui/action-fields'
import { ActionForm } from '@/app/_components/ui/action-form'
import { CheckGroup } from '@/app/_components/ui/check-field'
import { Fold } from '@/app/_components/ui/fold'
import { LogRow, PageHead, Section } from '@/app/_components/ui/sheet'
import { signOutAction } from '@/app/account/actions'
import { loadFrame } from '@/app/loader'
import { endPostAction, setScopeAction } from './actions'
import { loadPost } from './loader'

export const metadata: Metadata = { title: 'Post' }

interface PostPageProps {
  readonly params: Promise<{ post: string }>
}

export default async function PostPage({ params }: PostPageProps) {
  const frame = await loadFrame()
  const page = await loadPost((await params).post)
  return (
    <PageFrame frame={frame} current="/desk/people" signOut={signOutAction}>
      <PageHead sentence={`What ${page.name} may judge at ${page.clubName}.`} margin="Post">
        Now: {page.judges}. What lies beyond is kept when it is rated, marked, and does not count; a danger always does.
      </PageHead>
      <Section title="Scope">
        <LogRow>
          <ActionForm action={setScopeAction} submit="Keep the scope" className="max-w-xl" hidden={{ post: page.id }}>
            <CheckGroup legend="Families">
              <div className="grid grid-cols-2 gap-x-4 sm:grid-cols-3">
                {page.families.map(({ key, label, chosen }) => (
                  <FormTick key={key} name={`family:${key}`} label={label} defaultChecked={chosen} />
                ))}
              </div>
            </CheckGroup>
            <CheckGroup legend="Places">
              <div className="grid grid-cols-2 gap-x-4 sm:grid-cols-3">
                {page.places.map(({ key, label, chosen }) => (
                  <FormTick key={key} name={`place:${key}`} label={label} defaultChecked={chosen} />
                ))}
              </div>
            </CheckGroup>
            <FormField
              label="Until"
              name="until"
              type="date"
              hint="The last day; empty for no end."
              defaultValue={page.until}
            />
          </ActionForm>
        </LogRow>
      </Section>
      <Section title="End the post">
        <LogRow>
          <p className="measure pb-3">
            From now on {page.name} sees nothing of {page.clubName} but what was written under that name. What was rated
            and signed stays; ratings still unsent on a phone will not be taken.
          </p>
          <Fold summary="End it">
            <ActionForm
              action={endPostAction}
              submit={`End the post of ${page.name}`}
              tone="stop"
              prefix="end-"
              hidden={{ post: page.id }}
            />
          </Fold>
        </LogRow>
      </Section>
    </PageFrame>
  )
}
