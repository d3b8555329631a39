import { ActionPanel, type PanelAction } from '@/app/_components/domain/action-panel/action-panel'
import { LogRow } from '@/app/_components/ui/sheet'
import { answerAction, checkAction } from '@/app/desk/questions/actions'
import type { QuestionView } from '../loader'

const answerPanel = ({ id }: QuestionView, next: string): PanelAction => ({
  shortcut: 'e',
  label: 'Answer…',
  send: 'Send the answer',
  refused: 'Not kept',
  tone: 'go',
  sends: { question: id, next },
  asks: [
    {
      kind: 'words',
      name: 'words',
      label: 'What you saw',
      hint: 'The head coach reads it before she decides.',
      required: true,
    },
  ],
})

const withdrawPanel = ({ moment }: QuestionView, next: string): PanelAction => ({
  shortcut: 't',
  label: 'Take the question back…',
  send: 'Take it back',
  refused: 'Not taken back',
  tone: 'plain',
  note: 'The record keeps that it was asked.',
  sends: { moment, kind: 'withdrawn', next },
  asks: [],
})

/** A question about a moment: what is asked, what was answered, and what the reader can do about it. */
export function QuestionRow({ question, next }: { question: QuestionView; next: string }) {
  const { about, href, asked, text, replies, answered } = question
  return (
    <LogRow as="li" margin={answered ? 'answered' : 'open'}>
      <p className="font-bold">{href ? <a href={href}>{about}</a> : about}</p>
      <p className="text-13 text-soft">
        {asked}
        {href ? '' : ' The moment is hidden: no consent to video is in force.'}
      </p>
      <p className="measure">{text === null ? 'The words were erased.' : `“${text}”`}</p>
      {replies.map((reply) => (
        <div key={reply.id} className="border-s-2 border-line ps-3 pt-1">
          <p className="text-13 text-soft">
            {reply.sentence} {reply.href ? <a href={reply.href}>See the ratings</a> : null}
          </p>
          {reply.text ? <p className="measure">“{reply.text}”</p> : null}
        </div>
      ))}
      <div className="flex flex-wrap items-start gap-3 pt-2 empty:hidden">
        {question.toAnswer ? (
          <ActionPanel
            id={`answer-${question.id}`}
            action={answerAction}
            panel={answerPanel(question, next)}
            place="line"
          />
        ) : null}
        {question.correct ? (
          <a className="button" href={question.correct}>
            Correct the rating
          </a>
        ) : null}
        {question.own ? (
          <ActionPanel
            id={`withdraw-${question.id}`}
            action={checkAction}
            panel={withdrawPanel(question, next)}
            place="line"
          />
        ) : null}
      </div>
    </LogRow>
  )
}

/** Questions, each with what can be done; `next` is the page to come back to. */
export function QuestionRows({ questions, next }: { questions: readonly QuestionView[]; next: string }) {
  return (
    <ul>
      {questions.map((question) => (
        <QuestionRow key={question.id} question={question} next={next} />
      ))}
    </ul>
  )
}
