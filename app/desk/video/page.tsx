import type { Metadata } from 'next'
import { ActionPanel, type PanelAction } from '@/app/_components/domain/action-panel/action-panel'
import { PageFrame } from '@/app/_components/frame/page-frame'
import { Nothing, Notice } from '@/app/_components/ui/notice'
import { Beside, LogRow, PageHead, Section } from '@/app/_components/ui/sheet'
import { signOutAction } from '@/app/account/actions'
import { doneWords } from '@/app/desk/_components/done-words'
import { QuestionRows } from '@/app/desk/questions/_components/question-row'
import { loadFrame } from '@/app/loader'
import { openingAction } from './actions'
import { type LookRow, loadVideo } from './loader'

export const metadata: Metadata = { title: 'To look at' }

interface VideoPageProps {
  readonly searchParams: Promise<{ done?: string | string[] }>
}

const openingPanel = (open: boolean): PanelAction => ({
  shortcut: 'o',
  label: open ? 'Close…' : 'Open…',
  send: open ? 'Close looking across clubs' : 'Open looking across clubs',
  refused: 'Nothing was changed',
  tone: open ? 'stop' : 'go',
  note: open
    ? 'Nobody sees a moment of another club’s diver from now on. What was rated stays.'
    : 'A head coach may then grant one attempt at a time to a coach of another club, who sees the given name, the skill and the moment.',
  sends: { open: open ? 'no' : 'yes' },
  asks: [],
})

function Looks({ looks }: { looks: readonly LookRow[] }) {
  if (looks.length === 0)
    return (
      <Beside>
        <Nothing>
          Nothing waits for a second look: an attempt comes here when it has a moment on video and its standard still
          wants another coach, or when another club asks you.
        </Nothing>
      </Beside>
    )
  return (
    <ul>
      {looks.map(({ href, who, name, day, how }) => (
        <LogRow key={href} as="li" margin={day}>
          <a href={href} className="text-18 font-bold">
            {who}
          </a>{' '}
          {name}
          {how === 'granted' ? <span className="text-soft"> · asked by another club</span> : null}
        </LogRow>
      ))}
    </ul>
  )
}

export default async function ToLookAtPage({ searchParams }: VideoPageProps) {
  const { done } = await searchParams
  const frame = await loadFrame()
  const page = await loadVideo()
  const count = page.looks.length
  const waiting = count === 1 ? 'One attempt waits' : count === 0 ? 'No attempt waits' : `${count} attempts wait`
  return (
    <PageFrame frame={frame} current="/desk/video" signOut={signOutAction}>
      <PageHead
        sentence={page.coaches ? `${waiting} for a second look.` : 'A second coach, on video.'}
        margin="To look at"
      >
        You rate what you see, before you know what anybody else rated. It counts as a second coach.
        {page.coaches ? (
          <>
            {' '}
            <a href="/desk/clips">
              {page.waiting === 1 ? '1 filmed attempt waits' : `${page.waiting || 'No'} filmed attempts wait`} for a
              clip
            </a>
            .
          </>
        ) : null}
      </PageHead>
      {typeof done === 'string' ? (
        <Beside>
          <Notice tone="kept">{doneWords[done] ?? doneWords.kept}</Notice>
        </Beside>
      ) : null}
      {page.questions.length > 0 ? (
        <Section
          title="Questions on your moments"
          aside="A question changes no rating. Answer it, or correct what you rated."
        >
          <QuestionRows questions={page.questions} next="/desk/video" />
        </Section>
      ) : null}
      {page.coaches ? (
        <Section title="Attempts">
          <Looks looks={page.looks} />
        </Section>
      ) : null}
      {page.open === null ? null : (
        <Section title="Across clubs">
          <LogRow margin={page.open ? 'open' : 'closed'}>
            <p className="measure pb-2">
              {page.open
                ? 'Head coaches may grant an attempt to a coach of another club.'
                : 'Only coaches of a diver’s own club look at the videos.'}
            </p>
            <ActionPanel id="opening" action={openingAction} panel={openingPanel(page.open)} place="line" />
          </LogRow>
        </Section>
      )}
    </PageFrame>
  )
}
