import { saySeconds } from '../clip/frames'
import type { FilmMark } from './timing'

/** An instant by the mark that both films are laid on: "flight +0.233 s". */
export function sayFrom(label: string, seconds: number): string {
  const ms = Math.round(seconds * 1000)
  return `${label} ${ms < 0 ? '−' : '+'}${saySeconds(Math.abs(ms) / 1000)}`
}

/** The phase that a frame lies in, by the marks; null before the first of them. */
export const phaseAt = (marks: readonly FilmMark[], time: number): string | null =>
  [...marks].sort((a, b) => a.time - b.time).findLast((mark) => mark.time <= time + 0.002)?.label ?? null

/** What the keys do, for whoever has none to try. */
export const keysSaid =
  'While the focus is in the comparison: space plays and pauses both, left and right step by a frame, up and down change the speed, Home goes to the start, Page Up and Page Down to the mark before and after, comma and full stop move the second film by a frame. O lays one over the other, M turns the second round, P shows the points, [ and ] show less and more of it, Shift with the arrows moves it, + and − size it, 0 puts it back.'

/** Why two films stand side by side without a mark. */
export const noMarkInCommon =
  'The two have no mark in common, so both begin where their moments begin. Mark the same phase in both to lay them on it.'
