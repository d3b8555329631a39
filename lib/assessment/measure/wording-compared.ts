import type { MeasureCompared } from './compare-measures'
import { nameTaken, resultName, sayInterval, sayValue } from './wording-taken'

/** What was compared, in words: "Arms, press: arms from the vertical". */
export function nameCompared({ kind, down, what, phase }: MeasureCompared): string {
  const where = phase === null ? '' : `, ${phase}`
  return `${nameTaken({ kind, down })}${where}: ${resultName[what]}`
}

/** A result, and on a line of its own its interval: "7.1° clockwise", "5.2 to 9.0°". */
export const sayResult = (result: MeasureCompared['first']): string =>
  `${sayValue(result)}\n${sayInterval(result, result)}`

/** What can be said of the difference, the second against the first: "second 4.0 to 6.0° more", or that the films do not tell. */
export function sayCompared({ what, difference, opposite }: MeasureCompared): string {
  if (opposite) return 'to different sides, as the two cameras see it'
  if (!difference.told) return 'no difference that this film can show'
  const { value, low, high } = difference.by
  return value > 0
    ? `second ${sayInterval({ what }, { low, high })} more`
    : `second ${sayInterval({ what }, { low: -high, high: -low })} less`
}
