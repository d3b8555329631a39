import type { Metadata } from 'next'
import { DuoPlayer } from '@/app/_components/domain/compare/duo-player'
import { readOptions } from '@/app/_components/domain/compare/options'
import { PageFrame } from '@/app/_components/frame/page-frame'
import { Notice } from '@/app/_components/ui/notice'
import { Beside, PageHead, Section } from '@/app/_components/ui/sheet'
import { signOutAction } from '@/app/account/actions'
import { Choices } from '@/app/desk/moments/_components/choices'
import { loadFrame } from '@/app/loader'
import { Numbers } from './_components/numbers'
import { type Compared, loadComparison } from './loader'

export const metadata: Metadata = { title: 'Comparison' }

type Asked = Readonly<Record<string, string | string[] | undefined>>

interface ComparePageProps {
  readonly searchParams: Promise<Asked>
}

function Comparison({ page, asked }: { page: Compared; asked: Asked }) {
  const { films, fits, moments, swapped, note, numbers, wanting } = page
  return (
    <>
      <PageHead sentence={page.sentence} margin="Comparison">
        <a href={swapped}>The other way round</a>
      </PageHead>
      <Section title="Both films">
        <Beside>
          {note ? <Notice>{note}</Notice> : null}
          <div className="compared">
            <DuoPlayer key={moments} films={films} fits={fits} initial={readOptions(asked)} moments={moments} />
            <Numbers groups={numbers} wanting={wanting} names={[films.first.name, films.second.name]} />
          </div>
        </Beside>
      </Section>
    </>
  )
}

export default async function ComparisonPage({ searchParams }: ComparePageProps) {
  const frame = await loadFrame()
  const asked = await searchParams
  const page = await loadComparison(asked.moment)
  return (
    <PageFrame frame={frame} current="/desk/divers" signOut={signOutAction}>
      {page.kind === 'compared' ? <Comparison page={page} asked={asked} /> : null}
      {page.kind === 'choose' ? (
        <>
          <PageHead sentence={page.sentence} margin="Comparison">
            <a href={page.from.href}>{page.from.name}</a>
          </PageHead>
          <Section title="Compare with">
            <Choices groups={page.groups} />
          </Section>
        </>
      ) : null}
      {page.kind === 'refused' ? (
        <>
          <PageHead sentence="These cannot be compared." margin="Comparison">
            <a href={page.back.href}>{page.back.name}</a>
          </PageHead>
          <Beside>
            <Notice tone="warning">{page.why}</Notice>
          </Beside>
        </>
      ) : null}
    </PageFrame>
  )
}
