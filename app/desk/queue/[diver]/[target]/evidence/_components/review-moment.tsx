'use client'

import { type ReactNode, useState } from 'react'
import { ActionPanel, type PanelAction } from '@/app/_components/domain/action-panel/action-panel'
import { ClipPlayer } from '@/app/_components/domain/clip/clip-player'
import type { Lost } from '@/app/_components/domain/clip/say-lost'
import { Beside } from '@/app/_components/ui/sheet'
import { checkAction } from '@/app/desk/questions/actions'
import type { MomentView } from '../loader'
import { CheckButton } from './check-button'
import { ReviewKeys } from './review-keys'

const questionPanel = ({ id, next }: MomentView): PanelAction => ({
  shortcut: 'q',
  label: 'Question…',
  send: 'Ask the coach',
  refused: 'Not kept',
  tone: 'plain',
  sends: { moment: id, kind: 'questioned', next },
  asks: [
    {
      kind: 'words',
      name: 'words',
      label: 'What you see otherwise',
      hint: 'The coach who rated it reads this and answers.',
      required: true,
    },
  ],
})

/** Notes that the film did not open here and now; it takes nothing from the evidence. */
async function noteUnreachable(moment: string): Promise<string> {
  const form = new FormData()
  form.set('moment', moment)
  form.set('kind', 'not reachable')
  const { done, message } = await checkAction({}, form)
  return done ? 'Recorded as not reachable when looked at. It counts as before.' : (message ?? 'It was not recorded.')
}

const stands = ({ verdict, unreachable }: MomentView): string =>
  [
    ...(verdict ? [`You ${verdict.kind} it on ${verdict.day}.`] : []),
    ...(unreachable ? ['Not reachable when last looked at.'] : []),
  ].join(' ')

interface ReviewMomentProps {
  readonly moment: MomentView
  /** What was asked about it. */
  readonly questions: ReactNode
  /** What was rated. */
  readonly children: ReactNode
}

/** A moment of the evidence, large, with what was rated beside it, and what the head coach makes of it in the bar below. */
export function ReviewMoment({ moment, questions, children }: ReviewMomentProps) {
  const [lost, setLost] = useState<string | null>(null)
  const [opened, setOpened] = useState(false)
  const { id, clip, next, before, at, of } = moment
  const onLost = (by: Lost) => {
    // The film came, so that it is no evidence that cannot be reached.
    if (by === 'not readable') {
      setLost('This browser cannot play the film.')
      return
    }
    setLost('The film does not open.')
    noteUnreachable(id).then(setLost, () => setLost('The film does not open, and that could not be recorded now.'))
  }
  return (
    <>
      <Beside>
        <div className="review-moment">
          <div className="min-w-0">
            <ClipPlayer moment={clip} plays onLost={onLost} onAway={() => setOpened(true)} />
            <output className="block font-bold">{lost ?? stands(moment)}</output>
            <ReviewKeys away={clip.file === null} />
          </div>
          <div className="min-w-0">{children}</div>
        </div>
      </Beside>
      {questions}
      <div className="decision-bar">
        <div className="frame flex flex-wrap items-center gap-2 md:gap-3">
          <output className="font-bold" aria-label="Progress">
            {at} of {of}
          </output>
          {lost === null || opened ? (
            <CheckButton moment={id} kind="accepted" next={next} shortcut="a" tone="go">
              Accept
            </CheckButton>
          ) : null}
          <ActionPanel id={`question-${id}`} action={checkAction} panel={questionPanel(moment)} place="bar" />
          {clip.file === null ? (
            <CheckButton moment={id} kind="not reachable" next={next} shortcut="u" tone="plain">
              It does not open
            </CheckButton>
          ) : null}
          {before ? (
            <a href={before} className="button" data-shortcut="b">
              Back
            </a>
          ) : null}
          <a href={next} className="button" data-shortcut="n">
            {at < of ? 'Next' : 'To the decision'}
          </a>
        </div>
      </div>
    </>
  )
}
