import type { Metadata } from 'next'
import { DiveNumber } from '@/app/_components/domain/dive/dive-number'
import { PageFrame } from '@/app/_components/frame/page-frame'
import { Nothing } from '@/app/_components/ui/notice'
import { Beside, LogRow, PageHead, Section } from '@/app/_components/ui/sheet'
import { signOutAction } from '@/app/account/actions'
import { loadFrame } from '@/app/loader'
import { SearchForm } from '../_components/search-form'
import { type FoundView, loadSearch } from './loader'

export const metadata: Metadata = { title: 'Search the curriculum' }

interface SearchPageProps {
  readonly searchParams: Promise<{ q?: string | string[] }>
}

function sayFound(query: string, total: number): string {
  if (query === '') return 'Search the curriculum.'
  if (total === 0) return `Nothing is found for “${query}”.`
  return total === 1 ? `“${query}” is found once.` : `“${query}” is found in ${total} skills, criteria and faults.`
}

function FoundRow({ found }: { found: FoundView }) {
  const whole = found.phrase.map(({ text }) => text).join('')
  const pieces = found.phrase.map(({ text, hit }, index) => {
    const key = `${index} ${text}`
    return hit ? <mark key={key}>{text}</mark> : <span key={key}>{text}</span>
  })
  return (
    <li className="py-1.5">
      <p className="font-bold">
        {found.dive ? <DiveNumber>{found.dive}</DiveNumber> : null} {whole === found.title ? pieces : found.title}
      </p>
      {whole === found.title ? null : <p className="measure">{pieces}</p>}
      <p className="text-13 text-soft">
        {found.ways.map(({ href, name }, index) => (
          <span key={href}>
            {index > 0 ? ' · ' : ''}
            <a href={href} className="inline-block py-0.5" aria-label={`${found.title}: ${name}`}>
              {name}
            </a>
          </span>
        ))}
        {found.more > 0 ? ` · and ${found.more} more` : ''}
      </p>
    </li>
  )
}

export default async function SearchPage({ searchParams }: SearchPageProps) {
  const frame = await loadFrame()
  const { q } = await searchParams
  const page = await loadSearch(typeof q === 'string' ? q.trim() : '')
  const parts = [
    { title: 'Skills', found: page.skills },
    { title: 'Criteria', found: page.criteria },
    { title: 'Faults', found: page.faults },
  ]
  return (
    <PageFrame frame={frame} current="/curriculum" signOut={signOutAction}>
      <PageHead sentence={sayFound(page.query, page.total)} margin="curriculum">
        <SearchForm query={page.query} />
      </PageHead>
      {page.total === 0 ? (
        <Beside>
          <Nothing>
            Try a dive’s number, such as 203, with or without its letter; or what is seen, such as knees, hurdle or
            late. All of the words must be found, small misspellings are forgiven.
          </Nothing>
        </Beside>
      ) : null}
      {parts
        .filter(({ found }) => found.length > 0)
        .map(({ title, found }) => (
          <Section key={title} title={title}>
            <LogRow>
              <ul>
                {found.map((one) => (
                  <FoundRow key={one.key} found={one} />
                ))}
              </ul>
            </LogRow>
          </Section>
        ))}
    </PageFrame>
  )
}
