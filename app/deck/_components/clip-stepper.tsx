import { inRange } from '../state/camera'

interface ClipStepperProps {
  readonly clip: number
  readonly onStep: (clip: number) => void
}

/** The number of a clip, up or down by one with a wet thumb; nothing is typed. */
export function ClipStepper({ clip, onStep }: ClipStepperProps) {
  return (
    <fieldset className="deck-stepper">
      <legend className="sr-only">Clip number</legend>
      <button type="button" className="button" aria-label="Clip number down" onClick={() => onStep(inRange(clip - 1))}>
        −
      </button>
      <output className="deck-clip">
        <span className="deck-sub">clip</span> {clip}
      </output>
      <button type="button" className="button" aria-label="Clip number up" onClick={() => onStep(inRange(clip + 1))}>
        +
      </button>
    </fieldset>
  )
}

/** What a mark stands for until it is linked, with the number in reach. */
export function FilmedLine({ clip, onStep }: ClipStepperProps) {
  return (
    <div className="deck-filmed-line">
      <p>Waits for its clip. It counts as video once it is linked at the desk.</p>
      <ClipStepper clip={clip} onStep={onStep} />
    </div>
  )
}
