import type { Clip, Waiting } from './match-clips'

/** A coach marks an attempt so long after its clip began, as a rule: common practice, no published source. Milliseconds. */
const usualLead = 15_000

/** What the camera's clock is behind the programme's, milliseconds (negative: ahead), and how that is known. */
export interface CameraClock {
  readonly behind: number
  readonly from: 'said' | 'known clip' | 'numbers' | 'nothing'
  /** Clips that it was found from. */
  readonly clips: number
}

const middle = (numbers: readonly number[]): number => {
  const sorted = [...numbers].sort((a, b) => a - b)
  return sorted[Math.floor((sorted.length - 1) / 2)] ?? 0
}

/** What a camera's clock is behind by clips whose attempts are known; null without any that has a time. */
export function estimateBehind(
  pairs: readonly { readonly at: number; readonly start: number | null }[],
): number | null {
  const leads = pairs.flatMap(({ at, start }) => (start === null ? [] : [at - start]))
  return leads.length === 0 ? null : middle(leads) - usualLead
}

/**
 * Finds the camera's clock: from the one clip that the coach knows, else from the clips whose number and time are both
 * given, else from nothing, and then it is taken to be right.
 */
export function findCameraClock(
  waiting: readonly Waiting[],
  clips: readonly Clip[],
  known: { readonly attempt: string; readonly line: number } | null,
): CameraClock {
  const clip = clips.find(({ line }) => line === known?.line)
  const attempt = waiting.find((one) => one.attempt === known?.attempt)
  const one = clip && attempt ? estimateBehind([{ at: attempt.at, start: clip.start }]) : null
  if (one !== null) return { behind: one, from: 'known clip', clips: 1 }
  const pairs = clips.flatMap(({ clip: number, start }) => {
    const own = waiting.filter((other) => other.clip === number)
    // One clip of several dives tells where they lie in it, not when it began.
    return number !== null && start !== null && own.length === 1 && own[0] ? [{ at: own[0].at, start }] : []
  })
  const several = estimateBehind(pairs)
  return several === null
    ? { behind: 0, from: 'nothing', clips: 0 }
    : { behind: several, from: 'numbers', clips: pairs.length }
}

/** Milliseconds of `3` or `3:20` (minutes, or minutes and seconds), also with hours `1:03:20`; null when it is none. */
export function readClockError(text: string): number | null {
  const match = /^(?:(\d{1,2}):(?=\d{1,2}:))?(\d{1,4})(?::([0-5]\d))?$/.exec(text.trim())
  if (!match) return null
  const [hours, minutes, seconds] = [Number(match[1] ?? 0), Number(match[2]), Number(match[3] ?? 0)]
  return (hours * 3600 + minutes * 60 + seconds) * 1000
}

/** "3 min 20 s behind", "1 h 2 min ahead", "right". Whole seconds. */
export function sayClock(behind: number): string {
  const total = Math.round(Math.abs(behind) / 1000)
  const parts = [
    [Math.floor(total / 3600), 'h'],
    [Math.floor(total / 60) % 60, 'min'],
    [total % 60, 's'],
  ].flatMap(([count, unit]) => (count ? [`${count} ${unit}`] : []))
  return parts.length === 0 ? 'right' : `${parts.join(' ')} ${behind > 0 ? 'behind' : 'ahead'}`
}
