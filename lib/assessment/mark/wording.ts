import type { Rating } from '../../curriculum/model'
import { sayRated, saySuggestion } from '../measure/wording-asked'
import { listed } from '../readiness/grammar'
import type { Apart } from './apart'
import type { MarkKey } from './mark'
import type { Oddity } from './odd'
import type { CriterionSuggestion } from './suggestions'

/** A time of a film in seconds to the thousandth: "1.017 s". */
export const sayTime = (ms: number): string => `${(ms / 1000).toFixed(3)} s`

/** What is seen in the frame to mark, where the key alone does not say it. */
export const markHint: Partial<Readonly<Record<MarkKey, string>>> = {
  flight: 'first frame off the board',
  entry: 'first frame in which the water is touched',
}

/** "17 ms later, 1 frame", "at the same time"; frames only where they are known. */
export function sayApart({ ms, frames }: Apart): string {
  if (ms === 0) return 'the same frame'
  const side = ms > 0 ? 'later' : 'earlier'
  const count = frames === null ? '' : `, ${Math.abs(frames)} ${Math.abs(frames) === 1 ? 'frame' : 'frames'}`
  return `${Math.abs(ms)} ms ${side}${count}`
}

/** What is odd about a mark, and what to do; it was kept. */
export function sayOddity(odd: Oddity): string {
  if (odd.kind === 'order')
    return `“${odd.first.key}” (${sayTime(odd.first.atMs)}) does not come before “${odd.second.key}” (${sayTime(odd.second.atMs)}). Look at both frames again.`
  if (odd.kind === 'outside')
    return `“${odd.mark.key}” (${sayTime(odd.mark.atMs)}) lies ${odd.side} the range of this moment.`
  return `How long one frame of this film lasts is not known, so “${odd.mark.key}” counts no frames. Step a few frames and mark it again.`
}

/** Ratings to stand beside a suggestion: of a coach, by initials where they are not the reader's own. */
export interface RatedBy {
  readonly rated: Rating | null
  readonly by: string | null
}

function sayWanting(found: Extract<CriterionSuggestion, { wanting: unknown }>, name: string): string {
  if (found.wanting === 'side')
    return `It suggests nothing for ${name}, for it was kept without a point on the board: nobody knows on which side of the tip the body was. Measure it again.`
  const ask = `To see what it suggests for ${name}, measure on the frame in which the body passes the level of the board on the way down`
  if (found.wanting === 'way down') return `${ask}: by its coach’s marks this frame is not.`
  return `${ask}: this point is ${Math.abs(found.height).toFixed(2)} m ${found.height > 0 ? 'above' : 'below'} it.`
}

/** What a kept measure means for a criterion, in a sentence; beside it what was rated, where the reader may see that. */
export function sayMeasured(found: CriterionSuggestion, rated: RatedBy | null): string {
  const name = `“${found.criterion.title}”`
  if ('unmarked' in found) {
    const marks = found.unmarked.map((key) => `“${key}”`)
    return `Mark ${listed(marks)} to see what it suggests for ${name}.`
  }
  if ('wanting' in found) return sayWanting(found, name)
  const said = saySuggestion(found.suggestion)
  return `${name}: ${said}${rated ? `; ${sayRated(rated.rated, rated.by)}` : ''}.`
}
