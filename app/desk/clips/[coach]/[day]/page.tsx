import type { Metadata } from 'next'
import { PageFrame } from '@/app/_components/frame/page-frame'
import { Notice } from '@/app/_components/ui/notice'
import { Beside, LogRow, PageHead } from '@/app/_components/ui/sheet'
import { signOutAction } from '@/app/account/actions'
import { loadFrame } from '@/app/loader'
import { MatchForm } from '../../_components/match-form'
import { loadSession } from './loader'

export const metadata: Metadata = { title: 'Link a list of clips' }

interface SessionPageProps {
  readonly params: Promise<{ coach: string; day: string }>
}

export default async function LinkClipsPage({ params }: SessionPageProps) {
  const { coach, day } = await params
  const frame = await loadFrame()
  const session = await loadSession(coach, day)
  const count = session.rows.length
  return (
    <PageFrame frame={frame} current="/desk/video" signOut={signOutAction}>
      <PageHead sentence="Link a list of clips." margin={session.title}>
        {count === 1 ? 'One attempt waits' : `${count} attempts wait`} for a clip. Each is proposed the clip of its
        number, else the one that its time falls into; nothing is linked before you confirm it.{' '}
        <a href="/desk/clips">Back to the list</a>
      </PageHead>
      {session.withoutConsent.length > 0 ? (
        <Beside>
          <Notice>
            Left out, for no consent to video is in force: {session.withoutConsent.join(', ')}. The head coach records
            one on the diver’s page.
          </Notice>
        </Beside>
      ) : null}
      <LogRow>
        <MatchForm session={session} />
      </LogRow>
    </PageFrame>
  )
}
