import type { Metadata } from 'next'
import { PageFrame } from '@/app/_components/frame/page-frame'
import { Beside, PageHead, Section } from '@/app/_components/ui/sheet'
import { signOutAction } from '@/app/account/actions'
import { loadFrame } from '@/app/loader'
import type { PipelineRow } from '@/lib/reports/pipeline'
import { PipelineTable } from './_components/pipeline-table'
import { listHref, loadRegion, type Region, stepLabel } from './loader'

export const metadata: Metadata = { title: 'Region' }

interface RegionPageProps {
  readonly searchParams: Promise<Record<string, string | string[] | undefined>>
}

const countIn = (row: PipelineRow, figure: string): number =>
  row.figures.find((one) => one.figure === figure)?.divers.length ?? 0

function Pipeline(props: {
  region: Region
  rows: readonly PipelineRow[]
  name: 'levels' | 'moves'
  sort: string | undefined
}) {
  const { region, rows, name, sort } = props
  const figures = rows[0]?.figures.map(({ figure }) => figure) ?? []
  const sorted = sort && figures.includes(sort) ? [...rows].sort((a, b) => countIn(b, sort) - countIn(a, sort)) : rows
  return (
    <PipelineTable
      caption={name === 'levels' ? 'Divers by club and level held' : 'Divers by club and board move'}
      stepHead={name === 'levels' ? 'Level held' : 'Board move'}
      figures={figures.map((label) => ({
        label,
        sortHref: sort === label ? '/region' : `/region?${name}=${label}`,
        sorted: sort === label,
      }))}
      rows={sorted.map((row) => ({
        key: `${row.club} ${row.step}`,
        club: region.clubName(row.club),
        step: stepLabel(row.step, region.desk.curriculum),
        cells: row.figures.map(({ figure, divers }) => ({ href: listHref(row, figure), count: divers.length })),
      }))}
    />
  )
}

export default async function RegionPage({ searchParams }: RegionPageProps) {
  const query = await searchParams
  const frame = await loadFrame()
  const region = await loadRegion()
  const ready = region.divers.filter(
    (diver) => diver.next === 'ready' || [...diver.moves.values()].includes('ready'),
  ).length
  const sortOf = (name: string) => (typeof query[name] === 'string' ? query[name] : undefined)
  return (
    <PageFrame frame={frame} current="/region" signOut={signOutAction}>
      <PageHead
        sentence={`${ready} of ${region.divers.length} divers ${ready === 1 ? 'is' : 'are'} ready for a step that waits for a head coach.`}
        margin={region.programme}
      >
        Every number opens its list. Numbers this small say who, not how clubs compare.
      </PageHead>
      <Section title="By level" aside="ready, near and held up are said of the next level">
        <Beside>
          <Pipeline region={region} rows={region.levels} name="levels" sort={sortOf('levels')} />
        </Beside>
      </Section>
      <Section title="From 1 m to 3 m" aside="each diver stands in one column">
        <Beside>
          <Pipeline region={region} rows={region.moves} name="moves" sort={sortOf('moves')} />
        </Beside>
      </Section>
    </PageFrame>
  )
}
