import { CheckField, CheckGroup } from '@/app/_components/ui/check-field'
import { SelectField, TextAreaField } from '@/app/_components/ui/field'
import type { Route } from '../state/address'
import { noteLimit } from '../state/items'
import { CameraSettings } from './camera-settings'
import { useDeck } from './deck-context'
import { MomentList } from './moment-list'
import { Top } from './top'
import type { OpenDraft } from './use-draft'
import type { Subject } from './use-subject'
import { WayBack } from './way-back'

const settings = ['training', 'test', 'meet'] as const

interface MoreScreenProps {
  readonly open: OpenDraft
  readonly back: Route
  /** Of a new attempt: its circumstances can still be said. */
  readonly subject?: Subject
  /** False when no consent to video of the diver is in force. */
  readonly video: boolean
  readonly problem: string | null
}

/** What is typed about an attempt: never needed, never lost. */
export function MoreScreen({ open: { draft, act }, back, subject, video, problem }: MoreScreenProps) {
  const long = draft.note.trim().length - noteLimit
  return (
    <>
      <Top back={{ to: back, label: 'Back to the rating' }}>
        <h1 className="text-18">Note and video</h1>
      </Top>
      <main id="main" className="deck-page">
        {problem ? (
          <p role="alert" className="deck-notice">
            {problem}
          </p>
        ) : null}
        <TextAreaField
          label="Note"
          name="note"
          value={draft.note}
          error={long > 0 ? `The note is ${long} characters too long. Shorten it to ${noteLimit}.` : undefined}
          onChange={(event) => act({ type: 'say', changes: { note: event.target.value } })}
        />
        {video ? (
          <MomentList draft={draft} act={act} showErrors={problem !== null} />
        ) : (
          <p className="deck-notice">
            No consent to video of this diver is in force: no moment is kept. The head coach records consents at the
            desk.
          </p>
        )}
        {subject && video ? <CameraSettings open={{ draft, act }} /> : null}
        {subject ? <Circumstances draft={draft} act={act} subject={subject} /> : null}
        <WayBack className="button button-go deck-wide" to={back}>
          Back to the rating
        </WayBack>
      </main>
    </>
  )
}

function Circumstances({ draft, act, subject }: Pick<OpenDraft, 'draft' | 'act'> & { subject: Subject }) {
  const { roster, dispatch } = useDeck()
  return (
    <>
      <CheckGroup legend="Where it is done">
        {settings.map((setting) => (
          <CheckField
            key={setting}
            type="radio"
            name="setting"
            label={setting}
            checked={draft.setting === setting}
            onChange={() => act({ type: 'say', changes: { setting } })}
          />
        ))}
      </CheckGroup>
      <CheckField
        label="The coach called it through (cued)"
        checked={draft.cued}
        onChange={(event) => act({ type: 'say', changes: { cued: event.target.checked } })}
      />
      <SelectField
        label="Judged at"
        name="level"
        value={subject.atLevel}
        disabled={subject.call !== null}
        hint={subject.call ? 'The call that is open fixes the level.' : undefined}
        onChange={(event) => dispatch({ type: 'level', slot: subject.slot, level: event.target.value })}
      >
        {roster.curriculum.levels.map((level) => (
          <option key={level.key} value={level.key}>
            {level.title}
          </option>
        ))}
      </SelectField>
    </>
  )
}
