import type { Metadata } from 'next'
import { ClipDesk } from '@/app/_components/domain/clip/clip-desk'
import { ClipPlayer } from '@/app/_components/domain/clip/clip-player'
import { PageFrame } from '@/app/_components/frame/page-frame'
import { Beside, LogRow, PageHead, Section } from '@/app/_components/ui/sheet'
import { signOutAction } from '@/app/account/actions'
import { markAction, measureAction, takeBackAction } from '@/app/desk/moments/[moment]/actions'
import { loadFrame } from '@/app/loader'
import { LookForm } from '../_components/look-form'
import { lookAction } from '../actions'
import { loadLook } from '../loader'

export const metadata: Metadata = { title: 'Look' }

interface LookPageProps {
  readonly params: Promise<{ attempt: string }>
}

export default async function LookAtAttemptPage({ params }: LookPageProps) {
  const frame = await loadFrame()
  const look = await loadLook((await params).attempt)
  return (
    <PageFrame frame={frame} current="/desk/video" signOut={signOutAction}>
      <PageHead sentence={`${look.who}: ${look.name}.`} margin={look.day}>
        Rate what the video shows. Blank means not watched; the notch lies under what the level asks.
      </PageHead>
      <Section title="The moment">
        {look.films.map(({ clip, work }) => (
          <LogRow key={clip.href} margin="video">
            {work ? (
              <ClipDesk
                moment={clip}
                marks={work.marks}
                measures={work.measures}
                markAction={markAction}
                measureAction={measureAction}
                takeBackAction={takeBackAction}
              />
            ) : (
              <ClipPlayer moment={clip} />
            )}
          </LogRow>
        ))}
      </Section>
      <Section title="What you saw">
        <Beside>
          <LookForm action={lookAction} attempt={look.attempt} phases={look.phases} faults={look.faults} />
        </Beside>
      </Section>
    </PageFrame>
  )
}
