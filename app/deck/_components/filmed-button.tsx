import { useDeck } from './deck-context'
import type { OpenDraft } from './use-draft'

interface FilmedButtonProps {
  readonly open: OpenDraft
  /** False when no consent to video of the diver is in force. */
  readonly video: boolean
}

/** One tap: this attempt was filmed, as the camera's next clip. A second tap takes it back. */
export function FilmedButton({ open: { draft, act }, video }: FilmedButtonProps) {
  const { state, stamp } = useDeck()
  if (!video) return <span className="deck-sub deck-no-video">No consent to video</span>
  const mark = () =>
    draft.filmed
      ? act({ type: 'not filmed' })
      : act({ type: 'filmed', filmed: { clip: state.camera.next, at: stamp().now } })
  return (
    <button type="button" className="deck-filmed" data-on={draft.filmed !== null} onClick={mark}>
      {draft.filmed ? `Filmed: clip ${draft.filmed.clip}` : 'Filmed now'}
    </button>
  )
}
