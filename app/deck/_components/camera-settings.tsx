import { CheckField } from '@/app/_components/ui/check-field'
import { withRunsOn } from '../state/camera'
import { ClipStepper } from './clip-stepper'
import { useDeck } from './deck-context'
import type { OpenDraft } from './use-draft'

/** How the camera counts: the number of the next clip, and whether one clip holds all dives. */
export function CameraSettings({ open: { draft, act } }: { open: Pick<OpenDraft, 'draft' | 'act'> }) {
  const { state, dispatch } = useDeck()
  const { camera } = state
  const step = (clip: number) =>
    draft.filmed ? act({ type: 'clip', clip }) : dispatch({ type: 'camera', camera: { ...camera, next: clip } })
  return (
    <section aria-label="Camera" className="deck-camera">
      <h2 className="text-15">{draft.filmed ? 'Filmed as' : 'Next clip of the camera'}</h2>
      <ClipStepper clip={draft.filmed?.clip ?? camera.next} onStep={step} />
      <CheckField
        label="One clip for all: the camera films on, and the number stays"
        checked={camera.runsOn}
        onChange={(event) =>
          dispatch({ type: 'camera', camera: withRunsOn(camera, event.target.checked, draft.filmed) })
        }
      />
    </section>
  )
}
