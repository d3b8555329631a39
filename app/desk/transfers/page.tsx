import type { Metadata } from 'next'
import { PageFrame } from '@/app/_components/frame/page-frame'
import { ActionForm } from '@/app/_components/ui/action-form'
import { Notice } from '@/app/_components/ui/notice'
import { Beside, LogRow, PageHead, Section } from '@/app/_components/ui/sheet'
import { signOutAction } from '@/app/account/actions'
import { loadFrame } from '@/app/loader'
import { AskForm, ToAnswer, Waiting } from './_components/transfer-rows'
import { takeBackAction } from './actions'
import { loadTransfers } from './loader'

export const metadata: Metadata = { title: 'Transfers' }

interface TransfersPageProps {
  readonly searchParams: Promise<{ done?: string | string[] }>
}

const doneWords: Readonly<Record<string, string>> = {
  proposed: 'Proposed. Nothing moves before the other head coach agrees.',
  agreed: 'Agreed. The record has gone along; squads of the old club are left.',
  ended: 'Ended: nothing moves.',
  left: 'The diver has left. The record is kept and nobody’s to read.',
}

const headline = (waiting: number): string =>
  waiting === 0
    ? 'No transfer waits for your word.'
    : `${waiting === 1 ? 'One transfer waits' : `${waiting} transfers wait`} for your word.`

export default async function TransfersOfClubsPage({ searchParams }: TransfersPageProps) {
  const { done } = await searchParams
  const frame = await loadFrame()
  const page = await loadTransfers()
  const said = typeof done === 'string' ? doneWords[done] : undefined
  return (
    <PageFrame frame={frame} current="/desk/squads" signOut={signOutAction}>
      <PageHead sentence={headline(page.toAnswer.length)} margin="Transfers">
        A diver moves when the head coaches of both clubs agree. To send one of yours, begin on the diver’s page.
      </PageHead>
      {said ? (
        <Beside>
          <Notice tone="kept">{said}</Notice>
        </Beside>
      ) : null}
      {page.toAnswer.length > 0 ? (
        <Section title="Wants your word">
          <ul>
            {page.toAnswer.map((transfer) => (
              <ToAnswer key={transfer.id} transfer={transfer} />
            ))}
          </ul>
        </Section>
      ) : null}
      {page.waiting.length > 0 ? (
        <Section title="Waits for the other club">
          <ul>
            {page.waiting.map((transfer) => (
              <Waiting key={transfer.id} transfer={transfer} />
            ))}
          </ul>
        </Section>
      ) : null}
      <Section title="Ask another club for a diver">
        <AskForm page={page} />
      </Section>
      {page.former.length > 0 ? (
        <Section title="Left without a new club">
          <ul>
            {page.former.map(({ id, name, club, line }) => (
              <LogRow key={id} as="li">
                <div className="flex flex-wrap items-start justify-between gap-3">
                  <span>
                    <b>{name}</b> <span className="text-soft">{line}</span>
                  </span>
                  <ActionForm
                    action={takeBackAction}
                    submit={`Take ${name} back`}
                    tone="text"
                    prefix={id}
                    hidden={{ diver: id, club }}
                  />
                </div>
              </LogRow>
            ))}
          </ul>
        </Section>
      ) : null}
      {page.settled.length > 0 ? (
        <Section title="Settled">
          <ul>
            {page.settled.map(({ id, day, sentence, outcome }) => (
              <LogRow key={id} as="li" margin={day}>
                {sentence} <span className="text-soft">· {outcome}</span>
              </LogRow>
            ))}
          </ul>
        </Section>
      ) : null}
    </PageFrame>
  )
}
