import type { Metadata } from 'next'
import { Caution } from '@/app/_components/domain/caution/caution'
import { PageFrame } from '@/app/_components/frame/page-frame'
import { Fold } from '@/app/_components/ui/fold'
import { Beside, LogRow, PageHead, Section } from '@/app/_components/ui/sheet'
import { signOutAction } from '@/app/account/actions'
import { loadFrame } from '@/app/loader'
import { AskedList } from '../_components/asked-list'
import { type CriterionView, type FaultView, loadSkill } from './loader'

export const metadata: Metadata = { title: 'Skill' }

function Criterion({ criterion }: { criterion: CriterionView }) {
  return (
    <LogRow margin={criterion.critical ? 'critical' : undefined}>
      <h3 className="font-bold">{criterion.title}</h3>
      <p className="measure">{criterion.statement}</p>
      <p className="text-13 text-soft">asks {criterion.expects}</p>
      <Fold summary="What is seen at each rating">
        <ol start={0} className="measure list-decimal pl-6">
          {criterion.anchors.map((anchor) => (
            <li key={anchor}>{anchor}</li>
          ))}
        </ol>
      </Fold>
    </LogRow>
  )
}

function Fault({ fault }: { fault: FaultView }) {
  return (
    <LogRow margin="fault">
      <h3 className="font-bold">{fault.seen}</h3>
      <p className="measure text-soft">{fault.causes.join(' ')}</p>
      <ul className="measure">
        {fault.corrections.map((correction) => (
          <li key={correction.text}>
            <span className="text-13 text-soft">{correction.kind}: </span>
            {correction.href ? <a href={correction.href}>{correction.text}</a> : correction.text}
          </li>
        ))}
      </ul>
    </LogRow>
  )
}

interface SkillPageProps {
  readonly params: Promise<{ pair: string }>
}

export default async function SkillPage({ params }: SkillPageProps) {
  const frame = await loadFrame()
  const page = await loadSkill((await params).pair)
  return (
    <PageFrame frame={frame} current="/curriculum" signOut={signOutAction}>
      <PageHead sentence={page.name} margin={page.dive ?? 'lead-up'}>
        <p className="text-ink">{page.summary}</p>
        <p>
          {page.difficulty ? `Difficulty ${page.difficulty} · ` : ''}
          {page.signer}
        </p>
      </PageHead>
      <Beside>
        <Caution about="dive" />
      </Beside>
      {page.restsOn ? (
        <Section title="Rests on">
          <LogRow>
            <AskedList asked={page.restsOn} />
          </LogRow>
        </Section>
      ) : null}
      {page.phases.map(({ phase, criteria, faults }) => (
        <Section key={phase} title={phase.charAt(0).toUpperCase() + phase.slice(1)}>
          {criteria.map((criterion) => (
            <Criterion key={criterion.key} criterion={criterion} />
          ))}
          {faults.map((fault) => (
            <Fault key={fault.key} fault={fault} />
          ))}
        </Section>
      ))}
    </PageFrame>
  )
}
