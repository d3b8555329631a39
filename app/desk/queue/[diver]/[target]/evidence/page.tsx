import type { Metadata } from 'next'
import { PageFrame } from '@/app/_components/frame/page-frame'
import { Nothing } from '@/app/_components/ui/notice'
import { Beside, PageHead, Section } from '@/app/_components/ui/sheet'
import { signOutAction } from '@/app/account/actions'
import { QuestionRows } from '@/app/desk/questions/_components/question-row'
import { loadFrame } from '@/app/loader'
import { RatingsTable } from './_components/ratings-table'
import { ReviewMoment } from './_components/review-moment'
import { loadReview } from './loader'

export const metadata: Metadata = { title: 'Evidence' }

interface EvidencePageProps {
  readonly params: Promise<{ diver: string; target: string }>
  readonly searchParams: Promise<{ moment?: string | string[] }>
}

export default async function EvidenceReviewPage({ params, searchParams }: EvidencePageProps) {
  const { diver, target } = await params
  const { moment: wanted } = await searchParams
  const frame = await loadFrame()
  const page = await loadReview(diver, target, typeof wanted === 'string' ? wanted : undefined)
  const { moment } = page
  const here = `${page.decision}/evidence${moment ? `?moment=${moment.id}` : ''}`
  return (
    <PageFrame frame={frame} current="/desk/queue" signOut={signOutAction}>
      <PageHead sentence={moment ? `${moment.name}.` : 'Nothing to look at.'} margin={moment?.day ?? 'evidence'}>
        {page.diver} · {page.step} · <a href={page.decision}>Back to the decision</a>
      </PageHead>
      {moment ? (
        <ReviewMoment
          key={moment.id}
          moment={moment}
          questions={
            moment.questions.length > 0 ? (
              <Section title="Questions about this moment">
                <QuestionRows questions={moment.questions} next={here} />
              </Section>
            ) : null
          }
        >
          <RatingsTable ratings={moment.ratings} />
          <p className="pt-2 text-13 text-soft">
            A question changes no rating. The coach sees it, and the decision says what became of it.
          </p>
        </ReviewMoment>
      ) : (
        <Beside>
          <Nothing>No moment of this evidence is on video, or no consent to video is in force.</Nothing>
        </Beside>
      )}
    </PageFrame>
  )
}
