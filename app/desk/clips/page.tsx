import type { Metadata } from 'next'
import { PageFrame } from '@/app/_components/frame/page-frame'
import { Nothing, Notice } from '@/app/_components/ui/notice'
import { Beside, PageHead, Section } from '@/app/_components/ui/sheet'
import { signOutAction } from '@/app/account/actions'
import { doneWords } from '@/app/desk/_components/done-words'
import { loadFrame } from '@/app/loader'
import { WaitingList } from './_components/waiting-list'
import { loadClips, type Session } from './loader'

export const metadata: Metadata = { title: 'Waiting for their clip' }

interface ClipsPageProps {
  readonly searchParams: Promise<{ done?: string | string[]; count?: string | string[] }>
}

const titleOf = ({ day, coach }: Session): string =>
  `${day}, ${coach === null ? 'filmed by you' : `filmed by ${coach}`}`

const sentenceOf = (count: number): string =>
  count === 0
    ? 'No attempt waits for its clip.'
    : count === 1
      ? 'One attempt waits for its clip.'
      : `${count} attempts wait for their clip.`

export default async function WaitingForTheirClipPage({ searchParams }: ClipsPageProps) {
  const { done, count: linked } = await searchParams
  const frame = await loadFrame()
  const { count, sessions } = await loadClips()
  return (
    <PageFrame frame={frame} current="/desk/video" signOut={signOutAction}>
      <PageHead sentence={sentenceOf(count)} margin={<a href="/desk/video">To look at</a>}>
        They were marked “Filmed now” on the deck. Each becomes a video moment, and counts as one, when it is linked.
      </PageHead>
      {typeof done === 'string' ? (
        <Beside>
          <Notice tone="kept">
            {doneWords[done] ?? doneWords.kept}
            {typeof linked === 'string' && Number(linked) > 1 ? ` There were ${Number(linked)} of them.` : ''}
          </Notice>
        </Beside>
      ) : null}
      {count === 0 ? (
        <Beside>
          <Nothing>On the deck, tap “Filmed now” while you rate: the attempt comes here with its clip number.</Nothing>
        </Beside>
      ) : null}
      {sessions.map((session) => (
        <Section
          key={session.key}
          title={titleOf(session)}
          aside={session.linkable > 0 ? <a href={session.href}>Link a list of clips</a> : null}
        >
          <WaitingList rows={session.rows} />
        </Section>
      ))}
    </PageFrame>
  )
}
