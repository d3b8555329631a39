import type { Metadata } from 'next'
import { ActionPanel } from '@/app/_components/domain/action-panel/action-panel'
import { ArcFigure } from '@/app/_components/domain/arc/arc-figure'
import { Caution } from '@/app/_components/domain/caution/caution'
import { PageFrame } from '@/app/_components/frame/page-frame'
import { Fold } from '@/app/_components/ui/fold'
import { Notice } from '@/app/_components/ui/notice'
import { Beside, LogRow, PageHead, Section } from '@/app/_components/ui/sheet'
import { signOutAction } from '@/app/account/actions'
import { AttemptTable } from '@/app/desk/_components/attempt-table'
import { Explained } from '@/app/desk/_components/explained'
import { panelOf } from '@/app/desk/_components/panels'
import { QuestionRows } from '@/app/desk/questions/_components/question-row'
import { reviewAction } from '@/app/desk/queue/actions'
import { loadFrame } from '@/app/loader'
import { ReviewWay } from './_components/review-way'
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
      {page.shown ? (
        <Section title={page.shown.name} aside="the last attempts; the notch is what is asked">
          <Beside>
            <div className="decision-evidence">
              <ArcFigure title={`${page.shown.name}, the last attempts together`} {...page.shown.arc} />
              <AttemptTable caption={`${page.shown.name}, attempts by phase`} rows={page.shown.lines} />
            </div>
            <nav aria-label="Evidence by skill" className="flex flex-wrap gap-x-5 gap-y-1 pt-2 text-13">
              {page.pairs.map((one) => (
                <a key={one.key} href={one.href} aria-current={one.current ? 'true' : undefined}>
                  {one.name}
                </a>
              ))}
            </nav>
          </Beside>
        </Section>
      ) : null}
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
      {page.before.length > 0 ? (
        <Section title="Decided before">
          {page.before.map(({ id, sentence, reason, said }) => (
            <LogRow key={id}>
              <p>{sentence}</p>
              {reason ? <p className="text-soft">“{reason}”</p> : null}
              {said.map((line) => (
                <p key={line} className="measure text-13 text-soft">
                  {line}
                </p>
              ))}
            </LogRow>
          ))}
        </Section>
      ) : null}
      <Beside>
        <div className="pt-5">
          <Caution about={page.isMove ? 'move' : 'dive'} />
        </div>
      </Beside>
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
