import type { Metadata } from 'next'
import { PageFrame } from '@/app/_components/frame/page-frame'
import { Nothing, Notice } from '@/app/_components/ui/notice'
import { Beside, PageHead, Section } from '@/app/_components/ui/sheet'
import { signOutAction } from '@/app/account/actions'
import { loadFrame } from '@/app/loader'
import { QueueList } from './_components/queue-list'
import { loadQueue } from './loader'

export const metadata: Metadata = { title: 'To decide' }

interface QueuePageProps {
  readonly searchParams: Promise<{ done?: string | string[] }>
}

const words = ['No', 'One', 'Two', 'Three', 'Four', 'Five', 'Six', 'Seven', 'Eight', 'Nine', 'Ten'] as const

const headline = (count: number): string =>
  count === 0
    ? 'Nobody waits for a decision.'
    : `${words[count] ?? count} ${count === 1 ? 'step is' : 'steps are'} ready for your decision.`

export default async function QueuePage({ searchParams }: QueuePageProps) {
  const { done } = await searchParams
  const frame = await loadFrame()
  const queue = await loadQueue()
  return (
    <PageFrame frame={frame} current="/desk/queue" signOut={signOutAction}>
      <PageHead sentence={headline(queue.ready.length)} margin="To decide">
        Nothing moves until you decide. What was returned comes back here with new evidence.
      </PageHead>
      {typeof done === 'string' ? (
        <Beside>
          <Notice tone="kept">{doneWords[done] ?? doneWords.kept}</Notice>
        </Beside>
      ) : null}
      <Section title="Ready">
        {queue.ready.length === 0 ? (
          <Beside>
            <Nothing>Sign skills off as their standards are reached; levels and board moves then appear here.</Nothing>
          </Beside>
        ) : (
          <QueueList items={queue.ready} sinceWord="since" />
        )}
      </Section>
      {queue.toReview.length > 0 ? (
        <Section
          title="To review"
          aside="Approved before; what it asks no longer holds. Nothing is taken away by itself."
        >
          <QueueList items={queue.toReview} sinceWord="seen" />
        </Section>
      ) : null}
    </PageFrame>
  )
}

const doneWords: Readonly<Record<string, string>> = {
  approve: 'Approved, and written in the ledger.',
  override: 'Approved by override, and written in the ledger with your reason.',
  return: 'Returned. It comes back with a new clean attempt at what you asked for.',
  withdraw: 'Withdrawn, and written in the ledger with your reason.',
  kept: 'Kept.',
}
