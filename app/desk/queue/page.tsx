import type { Metadata } from 'next'
import { PageFrame } from '@/app/_components/frame/page-frame'
import { Nothing, Notice } from '@/app/_components/ui/notice'
import { Beside, PageHead, Section } from '@/app/_components/ui/sheet'
import { signOutAction } from '@/app/account/actions'
import { doneWords } from '@/app/desk/_components/done-words'
import { loadFrame } from '@/app/loader'
import { ListKeys } from './_components/list-keys'
import { ReviewRows } from './_components/review-list'
import { loadLists, type ReviewList } from './loader'

export const metadata: Metadata = { title: 'To decide' }

interface QueuePageProps {
  readonly searchParams: Promise<{ done?: string | string[]; list?: string | string[] }>
}

const words = ['No', 'One', 'Two', 'Three', 'Four', 'Five', 'Six', 'Seven', 'Eight', 'Nine', 'Ten'] as const

const headline = (count: number): string =>
  count === 0
    ? 'Nobody waits for a decision.'
    : `${words[count] ?? count} ${count === 1 ? 'step is' : 'steps are'} ready for your decision.`

const here = (list: string | null) => (list ? `/desk/queue?list=${encodeURIComponent(list)}` : '/desk/queue')

/** How much stands on each list, and the way to it. */
function Counts({ lists, only }: { lists: readonly ReviewList[]; only: string | null }) {
  return (
    <nav aria-label="Lists" className="flex flex-wrap gap-x-5 gap-y-1 pt-2 text-13">
      {only ? <a href={here(null)}>All lists</a> : null}
      {lists.map(({ name, title, count }) =>
        count > 0 ? (
          <a key={name} href={here(name)} aria-current={name === only ? 'page' : undefined}>
            {title} <b>{count}</b>
          </a>
        ) : (
          <span key={name}>
            {title} <b>0</b>
          </span>
        ),
      )}
    </nav>
  )
}

function List({ list, back }: { list: ReviewList; back: string }) {
  return (
    <Section title={list.title} aside={list.aside}>
      {list.rows.length === 0 ? (
        <Beside>
          <Nothing>
            {list.name === 'ready'
              ? 'Sign skills off as their standards are reached; levels and board moves then appear here.'
              : 'Nothing stands on this list now.'}
          </Nothing>
        </Beside>
      ) : (
        <ReviewRows rows={list.rows} back={back} />
      )}
      {list.rows.length < list.count ? (
        <Beside>
          <p className="py-3">
            <a href={here(list.name)}>All {list.count} on this list</a>
          </p>
        </Beside>
      ) : null}
    </Section>
  )
}

export default async function QueuePage({ searchParams }: QueuePageProps) {
  const { done, list } = await searchParams
  const frame = await loadFrame()
  const { lists, only } = await loadLists(typeof list === 'string' ? list : undefined)
  const shown = lists.filter(({ name, count }) => (only ? name === only : count > 0 || name === 'ready'))
  const ready = lists.find(({ name }) => name === 'ready')?.count ?? 0
  return (
    <PageFrame frame={frame} current="/desk/queue" signOut={signOutAction}>
      <PageHead sentence={headline(ready)} margin="To decide">
        Nothing moves until you decide. What was returned comes back here with new evidence.
        <Counts lists={lists} only={only} />
      </PageHead>
      {typeof done === 'string' ? (
        <Beside>
          <Notice tone="kept">{doneWords[done] ?? doneWords.kept}</Notice>
        </Beside>
      ) : null}
      <Beside>
        <ListKeys rows={shown.flatMap(({ rows }) => rows.map(({ id }) => id))} />
      </Beside>
      {shown.map((one) => (
        <List key={one.name} list={one} back={here(only)} />
      ))}
    </PageFrame>
  )
}
