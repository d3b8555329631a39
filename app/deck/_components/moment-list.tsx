import { useState } from 'react'
import { Field } from '@/app/_components/ui/field'
import { type MomentErrors, type MomentText, readMoment, withLink } from '@/lib/assessment/moment-text'
import type { Draft, DraftAction } from '../state/draft'
import { newId } from './device'

const most = 6

interface MomentListProps {
  readonly draft: Draft
  readonly act: (action: DraftAction) => void
  /** Keeping was tried: every error shows. */
  readonly showErrors: boolean
}

/** Moments of a video: a link, and from when to when. */
export function MomentList({ draft, act, showErrors }: MomentListProps) {
  const [left, setLeft] = useState<readonly string[]>([])
  return (
    <section aria-label="Video moments" className="deck-moments">
      {draft.moments.map((moment, index) => (
        <MomentFields
          key={moment.id}
          number={index + 1}
          moment={moment}
          errors={showErrors || left.includes(moment.id) ? errorsOf(moment) : {}}
          onLeave={() => setLeft((before) => [...before, moment.id])}
          act={act}
        />
      ))}
      <button
        type="button"
        className="button"
        disabled={draft.moments.length >= most}
        onClick={() => act({ type: 'add moment', moment: { id: newId(), link: '', start: '', end: '' } })}
      >
        Add a video moment
      </button>
    </section>
  )
}

function errorsOf(moment: MomentText): MomentErrors {
  if (`${moment.link}${moment.start}${moment.end}`.trim() === '') return {}
  const reading = readMoment(moment)
  return reading.ok ? {} : reading.errors
}

interface MomentFieldsProps {
  readonly number: number
  readonly moment: MomentText
  readonly errors: MomentErrors
  readonly onLeave: () => void
  readonly act: (action: DraftAction) => void
}

function MomentFields({ number, moment, errors, onLeave, act }: MomentFieldsProps) {
  const change = (changed: MomentText) => act({ type: 'change moment', moment: changed })
  const { id, link, start, end } = moment
  return (
    <fieldset
      className="deck-moment"
      onBlur={(event) => {
        if (!event.currentTarget.contains(event.relatedTarget)) onLeave()
      }}
    >
      <legend className="font-bold">Moment {number}</legend>
      <Field
        label="Link"
        name={`${id}-link`}
        type="url"
        inputMode="url"
        autoComplete="off"
        hint="Of the video; the deck stores the link, never the picture."
        value={link}
        error={errors.link}
        onChange={(event) => change({ ...moment, link: event.target.value })}
        onBlur={() => change(withLink(moment, link))}
      />
      <div className="deck-halves">
        <Field
          label="From"
          name={`${id}-start`}
          autoComplete="off"
          placeholder="0:12.4"
          value={start}
          error={errors.start}
          onChange={(event) => change({ ...moment, start: event.target.value })}
        />
        <Field
          label="To"
          name={`${id}-end`}
          autoComplete="off"
          placeholder="0:15"
          value={end}
          error={errors.end}
          onChange={(event) => change({ ...moment, end: event.target.value })}
        />
      </div>
      <button type="button" className="button" onClick={() => act({ type: 'drop moment', id })}>
        Remove moment {number}
      </button>
    </fieldset>
  )
}
