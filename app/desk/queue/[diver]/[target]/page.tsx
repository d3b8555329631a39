import type { Metadata } from 'next'
import { ActionPanel } from '@/app/_components/domain/action-panel/action-panel'
import { PageFrame } from '@/app/_components/frame/page-frame'
import { Fold } from '@/app/_components/ui/fold'
import { Notice } from '@/app/_components/ui/notice'
import { Beside, PageHead, Section } from '@/app/_components/ui/sheet'
import { signOutAction } from '@/app/account/actions'
import { CautionFoot } from '@/app/desk/_components/caution-foot'
import { Explained } from '@/app/desk/_components/explained'
import { panelOf } from '@/app/desk/_components/panels'
import { QuestionRows } from '@/app/desk/questions/_components/question-row'
import { reviewAction } from '@/app/desk/queue/actions'
import { loadFrame } from '@/app/loader'
import { DecidedBefore } from './_components/decided-before'
import { ReviewWay } from './_components/review-way'
import { ShownEvidence } from './_components/shown-evidence'
import { loadDecision } from './loader'

export const metadata: Metadata = { title: 'Decide' }

interface DecisionPageProps {
  readonly params: Promise<{ diver: string; target: string }>
  readonly searchParams: Promise<{ pair?: string | string[]; done?: string | string[] }>
}

export default async function DecidePage({ params, searchParams }: DecisionPageProps) {
  const { diver, target } = await params
  const { pair, done } = await searchParams
  const frame = await loadFrame()
  const page = await loadDecision(diver, target, typeof pair === 'string' ? pair : undefined)
  return (
    <PageFrame frame={frame} current="/desk/queue" signOut={signOutAction}>
      <PageHead sentence={page.headline} margin={page.diver.margin}>
        {page.thinnest ? <p className="text-ink">Thinnest: {page.thinnest}</p> : null}
        {page.cautions.map((caution) => (
          <p key={caution} className="text-13">
            {caution}
          </p>
        ))}
        <a href={page.diver.href}>All of {page.diver.name}</a>
        <ReviewWay review={page.review} questions={page.questions} through={done === 'evidence'} />
      </PageHead>
      {page.blocks.map((block) => (
        <Beside key={block}>
          <Notice tone="warning">{block}</Notice>
        </Beside>
      ))}
      <ShownEvidence shown={page.shown} pairs={page.pairs} />
      <Section title="What it rests on">
        <Beside>
          {page.ready ? (
            <Fold summary={`All that ${page.step} asks is met: read it`}>
              <Explained node={page.finding} />
            </Fold>
          ) : (
            <Explained node={page.finding} />
          )}
        </Beside>
      </Section>
      {page.questions.length > 0 ? (
        <Section title="Questions about the evidence" aside="A decision says what became of each.">
          <QuestionRows questions={page.questions} next={page.href} />
        </Section>
      ) : null}
      <DecidedBefore before={page.before} />
      <CautionFoot about={page.isMove ? 'move' : 'dive'} />
      {page.acts.length > 0 ? (
        <div className="decision-bar">
          <div className="frame flex flex-wrap gap-3">
            {page.acts.map((act) => (
              <ActionPanel
                key={act.act}
                id={act.act}
                action={reviewAction}
                panel={panelOf(act, '/desk/queue')}
                place="bar"
              />
            ))}
          </div>
        </div>
      ) : null}
    </PageFrame>
  )
}
