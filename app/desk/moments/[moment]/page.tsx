import type { Metadata } from 'next'
import { ClipDesk } from '@/app/_components/domain/clip/clip-desk'
import { MarksTable } from '@/app/_components/domain/clip/marks/marks-table'
import { PageFrame } from '@/app/_components/frame/page-frame'
import { Beside, PageHead, Section } from '@/app/_components/ui/sheet'
import { signOutAction } from '@/app/account/actions'
import { Choices } from '@/app/desk/moments/_components/choices'
import { QuestionRows } from '@/app/desk/questions/_components/question-row'
import { loadFrame } from '@/app/loader'
import { ExemplarForm } from './_components/exemplar-form'
import { markAction, measureAction, takeBackAction } from './actions'
import { nameAction, withdrawAction } from './exemplar/actions'
import { loadNaming } from './exemplar/loader'
import { loadMoment } from './loader'

export const metadata: Metadata = { title: 'Moment' }

interface MomentPageProps {
  readonly params: Promise<{ moment: string }>
}

export default async function MomentOfDivePage({ params }: MomentPageProps) {
  const frame = await loadFrame()
  const { moment } = await params
  const { who, name, day, back, clip, marks, measures, href, questions, others } = await loadMoment(moment)
  const naming = await loadNaming(moment)
  return (
    <PageFrame frame={frame} current="/desk/divers" signOut={signOutAction}>
      <PageHead sentence={`${who}: ${name}.`} margin={day}>
        <a href={back}>All attempts at it</a> · {clip.range}
      </PageHead>
      <Section title="The moment">
        <Beside>
          <ClipDesk
            moment={clip}
            marks={marks}
            measures={measures}
            markAction={markAction}
            measureAction={measureAction}
            takeBackAction={takeBackAction}
          />
        </Beside>
      </Section>
      {marks.coaches.length > 1 ? (
        <Section title="Marks beside each other" aside={`differences from ${marks.coaches[0]?.name}`}>
          <Beside>
            <MarksTable marks={marks} />
          </Beside>
        </Section>
      ) : null}
      {questions.length > 0 ? (
        <Section title="Questions about it">
          <QuestionRows questions={questions} next={href} />
        </Section>
      ) : null}
      {others.length > 0 ? (
        <Section title="Compare with">
          <Choices groups={others} />
        </Section>
      ) : null}
      {naming ? <ExemplarForm naming={naming} name={nameAction} withdraw={withdrawAction} /> : null}
    </PageFrame>
  )
}
