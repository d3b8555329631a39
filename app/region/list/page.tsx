import type { Metadata } from 'next'
import { PageFrame } from '@/app/_components/frame/page-frame'
import { LogRow, PageHead } from '@/app/_components/ui/sheet'
import { signOutAction } from '@/app/account/actions'
import { loadFrame } from '@/app/loader'
import { loadList } from './loader'

export const metadata: Metadata = { title: 'Region, list' }

interface ListPageProps {
  readonly searchParams: Promise<Record<string, string | string[] | undefined>>
}

export default async function RegionListPage({ searchParams }: ListPageProps) {
  const query = await searchParams
  const one = (name: string): string => (typeof query[name] === 'string' ? query[name] : '')
  const frame = await loadFrame()
  const asked = Math.max(1, Math.floor(Number(one('page'))) || 1)
  const list = await loadList(one('club'), one('step'), one('figure'), asked)
  const toPage = (page: number) =>
    `/region/list?${new URLSearchParams({ club: one('club'), step: one('step'), figure: one('figure'), page: String(page) })}`
  return (
    <PageFrame frame={frame} current="/region" signOut={signOutAction}>
      <PageHead sentence={`${list.total} ${list.total === 1 ? 'diver' : 'divers'} of ${list.club}`} margin={list.title}>
        <a href="/region">Back to the region</a>
      </PageHead>
      <ul>
        {list.rows.map((row) => (
          <LogRow key={row.href} as="li" margin={row.squads}>
            <a href={row.href} className="font-bold">
              {row.name}
            </a>
            {row.because ? <p className="measure text-soft">{row.because}</p> : null}
          </LogRow>
        ))}
      </ul>
      {list.pages > 1 ? (
        <nav aria-label="Pages" className="paging flex gap-4 pt-4">
          {list.page > 1 ? <a href={toPage(list.page - 1)}>Before</a> : null}
          <span>
            Page {list.page} of {list.pages}
          </span>
          {list.page < list.pages ? <a href={toPage(list.page + 1)}>Next</a> : null}
        </nav>
      ) : null}
    </PageFrame>
  )
}
