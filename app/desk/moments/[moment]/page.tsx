import type { Metadata } from 'next'
import { ClipPlayer } from '@/app/_components/domain/clip/clip-player'
import { PageFrame } from '@/app/_components/frame/page-frame'
import { Beside, PageHead, Section } from '@/app/_components/ui/sheet'
import { signOutAction } from '@/app/account/actions'
import { loadFrame } from '@/app/loader'
import { loadMoment } from './loader'

export const metadata: Metadata = { title: 'Moment' }

interface MomentPageProps {
  readonly params: Promise<{ moment: string }>
}

export default async function MomentOfDivePage({ params }: MomentPageProps) {
  const frame = await loadFrame()
  const { who, name, day, back, clip } = await loadMoment((await params).moment)
  return (
    <PageFrame frame={frame} current="/desk/divers" signOut={signOutAction}>
      <PageHead sentence={`${who}: ${name}.`} margin={day}>
        <a href={back}>All attempts at it</a> · {clip.range}
      </PageHead>
      <Section title="The moment">
        <Beside>
          <ClipPlayer moment={clip} />
        </Beside>
      </Section>
    </PageFrame>
  )
}
