import { type Difference, differenceOf } from './difference'
import { type Measured, measuredAs } from './measured'
import type { Result, ResultName } from './take'
import type { Taken, TakenKind } from './taken'

/** A measure of one film, with the phase in which it was taken; null where no mark says it, and of a whole flight. */
export interface InPhase {
  readonly taken: Taken
  readonly results: readonly Result[]
  readonly phase: string | null
}

/** One result in two films. Of what has a side, such as a tilt, sizes are compared: two cameras need not look the same way. */
export interface MeasureCompared {
  readonly kind: TakenKind
  /** Of arms: from straight down. */
  readonly down: boolean
  readonly what: ResultName
  readonly phase: string | null
  readonly first: Result
  readonly second: Result
  readonly difference: Difference
  /** Both have a side for certain, and not the same as their cameras see it. */
  readonly opposite: boolean
}

const sided: readonly ResultName[] = ['bodyTilt', 'armAngle', 'rotationRate']
// An hour of the clock face is the angle of the arms once more, and the time in the air that between two marks. How far a body
// turned between two frames, and how high over the tip it was measured, is what the coach chose and no part of the dive.
const leftOut: readonly ResultName[] = ['clockHour', 'flightTime', 'turned', 'heightOverTip']

/** A distance kept without a point on the board may be one behind the tip: it is compared with nothing. */
const isKnown = ({ taken }: InPhase): boolean => taken.kind !== 'distance' || taken.points.board !== undefined

const down = (taken: Taken): boolean => taken.kind !== 'flight' && taken.down
const alike = (one: InPhase, other: InPhase): boolean =>
  one.taken.kind === other.taken.kind && down(one.taken) === down(other.taken) && one.phase === other.phase

const isCertain = ({ low, high }: Measured): boolean => low > 0 || high < 0

function sizeOf({ what, value, sd, low, high }: Result): Measured {
  return sided.includes(what) ? measuredAs(Math.abs(value), sd, 0) : { value, sd, low, high }
}

/**
 * What was measured in both films: the same kind in the same phase, of several in one film the last. `first` and `second` come
 * oldest first.
 */
export function compareMeasures(first: readonly InPhase[], second: readonly InPhase[]): readonly MeasureCompared[] {
  const [ours, theirs] = [first.filter(isKnown), second.filter(isKnown)]
  const last = ours.filter((one, index) => !ours.slice(index + 1).some((later) => alike(one, later)))
  return last.flatMap((one) => {
    const other = theirs.findLast((candidate) => alike(one, candidate))
    if (!other) return []
    return one.results.flatMap((result): MeasureCompared[] => {
      const beside = other.results.find(({ what }) => what === result.what)
      if (!beside || leftOut.includes(result.what)) return []
      const apart = result.value * beside.value < 0 && isCertain(result) && isCertain(beside)
      const { what } = result
      const difference = differenceOf(sizeOf(result), sizeOf(beside))
      const opposite = sided.includes(what) && apart
      return [
        {
          kind: one.taken.kind,
          down: down(one.taken),
          what,
          phase: one.phase,
          first: result,
          second: beside,
          difference,
          opposite,
        },
      ]
    })
  })
}
