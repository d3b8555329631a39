import type { Metadata } from 'next'
import { PageFrame } from '@/app/_components/frame/page-frame'
import { Nothing } from '@/app/_components/ui/notice'
import { Beside, LogRow, PageHead } from '@/app/_components/ui/sheet'
import { signOutAction } from '@/app/account/actions'
import { loadFrame } from '@/app/loader'
import { loadList } from './loader'

export const metadata: Metadata = { title: 'Region, list' }

interface ListPageProps {
  readonly searchParams: Promise<Record<string, string | string[] | undefined>>
}

export default async function RegionListPage({ searchParams }: ListPageProps) {
  const frame = await loadFrame()
  const list = await loadList(await searchParams)
  return (
    <PageFrame frame={frame} current="/region" signOut={signOutAction}>
      <PageHead sentence={`${list.total} ${list.total === 1 ? 'diver' : 'divers'}`} margin="Region, list">
        {list.title}. <a href={list.backHref}>Back to the region</a>
      </PageHead>
      {list.rows.length === 0 ? (
        <Beside>
          <Nothing>Nobody stands here any more. Go back to the region for what the figures are now.</Nothing>
        </Beside>
      ) : null}
      <ul>
        {list.rows.map((row) => (
          <LogRow key={row.href} as="li" margin={row.margin}>
            <a href={row.href} className="font-bold">
              {row.name}
            </a>
            {row.squads ? <span className="text-soft"> · {row.squads}</span> : null}
            {row.says.map((sentence) => (
              <p key={sentence} className="measure text-soft">
                {sentence}
              </p>
            ))}
          </LogRow>
        ))}
      </ul>
      {list.pages > 1 ? (
        <nav aria-label="Pages" className="paging flex gap-4 pt-4">
          {list.page > 1 ? <a href={list.pageHref(list.page - 1)}>Before</a> : null}
          <span>
            Page {list.page} of {list.pages}
          </span>
          {list.page < list.pages ? <a href={list.pageHref(list.page + 1)}>Next</a> : null}
        </nav>
      ) : null}
    </PageFrame>
  )
}
