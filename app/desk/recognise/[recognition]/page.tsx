import type { Metadata } from 'next'
import { PageFrame } from '@/app/_components/frame/page-frame'
import { FormTextArea } from '@/app/_components/ui/action-fields'
import { ActionForm } from '@/app/_components/ui/action-form'
import { LogRow, PageHead, Section } from '@/app/_components/ui/sheet'
import { signOutAction } from '@/app/account/actions'
import { loadFrame } from '@/app/loader'
import { revokeRecognitionAction } from './actions'
import { loadRecognition } from './loader'

export const metadata: Metadata = { title: 'Recognition' }

interface RecognitionPageProps {
  readonly params: Promise<{ recognition: string }>
}

export default async function OneRecognitionPage({ params }: RecognitionPageProps) {
  const frame = await loadFrame()
  const page = await loadRecognition((await params).recognition)
  return (
    <PageFrame frame={frame} current="/desk/divers" signOut={signOutAction}>
      <PageHead sentence={`${page.what}: recognised.`} margin={page.state}>
        <a href={`/desk/divers/${page.diver.id}`}>{page.diver.name}</a>
      </PageHead>
      <Section title="What became of it">
        {page.lines.map(({ when, text, reason }) => (
          <LogRow key={text} margin={when}>
            {text}
            {reason ? <p className="measure text-soft">“{reason}”</p> : null}
          </LogRow>
        ))}
      </Section>
      {page.revocable ? (
        <Section title="Take it back" aside="From then on it earns nothing, and is not recognised again.">
          <LogRow>
            <ActionForm
              action={revokeRecognitionAction}
              submit="Take it back"
              tone="stop"
              refused="Not taken back"
              className="max-w-md"
              hidden={{ recognition: page.id }}
            >
              <FormTextArea label="Reason" name="reason" />
            </ActionForm>
          </LogRow>
        </Section>
      ) : null}
    </PageFrame>
  )
}
