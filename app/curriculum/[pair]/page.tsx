import type { Metadata } from 'next'
import { ArcFigure } from '@/app/_components/domain/arc/arc-figure'
import { Caution } from '@/app/_components/domain/caution/caution'
import { PageFrame } from '@/app/_components/frame/page-frame'
import { Beside, LogRow, PageHead, Section } from '@/app/_components/ui/sheet'
import { signOutAction } from '@/app/account/actions'
import { loadFrame } from '@/app/loader'
import { AskedList } from '../_components/asked-list'
import { SearchForm } from '../_components/search-form'
import { CriterionRow } from './_components/criterion-row'
import { FaultRow } from './_components/fault-row'
import { loadSkill } from './loader'

export const metadata: Metadata = { title: 'Skill' }

interface SkillPageProps {
  readonly params: Promise<{ pair: string }>
}

const sayDrawing = (level: string, turns: boolean): string =>
  `The notch is what ${level} asks of each phase; a double line stands under the critical ones.${
    turns ? ' The small circle shows which way the body turns over.' : ''
  }`

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

export default async function SkillPage({ params }: SkillPageProps) {
  const frame = await loadFrame()
  const page = await loadSkill((await params).pair)
  return (
    <PageFrame frame={frame} current="/curriculum" signOut={signOutAction}>
      <PageHead sentence={page.name} margin={page.dive ?? 'lead-up'}>
        <p className="text-ink">{page.summary}</p>
        <p>
          taught from {page.level} · {page.signer} · <a href={page.tree.href}>{page.tree.name}</a>
          {page.elsewhere.map(({ href, name }) => (
            <span key={href}>
              {' '}
              · <a href={href}>the same at: {name}</a>
            </span>
          ))}
        </p>
        <SearchForm />
      </PageHead>
      <Beside>
        <Caution about="dive" />
        <div className="pt-6">
          <ArcFigure
            {...page.arc}
            title={`${page.name}, as ${page.level} asks it`}
            caption={sayDrawing(page.level, page.arc.turning !== null)}
          />
        </div>
      </Beside>
      <Section title="In the tree">
        <LogRow margin="rests on">
          {page.restsOn ? <AskedList asked={page.restsOn} /> : <p>Nothing comes before it.</p>}
        </LogRow>
        <LogRow margin="opens">
          {page.opens.length > 0 ? (
            <ul>
              {page.opens.map(({ href, name }) => (
                <li key={href} className="py-0.5">
                  <a href={href}>{name}</a>
                </li>
              ))}
            </ul>
          ) : (
            <p>Nothing names it directly.</p>
          )}
        </LogRow>
        {page.difficulty.length > 0 ? <LogRow margin="difficulty">{page.difficulty.join(' ')}</LogRow> : null}
        <LogRow margin="standard">
          <ul className="measure">
            {page.standard.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </LogRow>
      </Section>
      {page.phases.map(({ phase, criteria, faults }) => (
        <Section key={phase} title={capital(phase)}>
          {criteria.map((criterion) => (
            <CriterionRow key={criterion.key} criterion={criterion} />
          ))}
          {faults.map((fault) => (
            <FaultRow key={fault.key} fault={fault} />
          ))}
        </Section>
      ))}
    </PageFrame>
  )
}
