import type { FilmedItem } from '@/lib/assessment/deck/contract'
import { longestClipNumber } from '@/lib/assessment/deck/limits'

/** The camera that films a session, as the deck counts its clips. */
export interface Camera {
  /** Number of the next clip. */
  readonly next: number
  /** The camera films on: all dives are in one clip, so that the number stays. */
  readonly runsOn: boolean
}

export const firstClip: Camera = { next: 1, runsOn: false }

/** A clip number that a camera can have. */
export const inRange = (clip: number): number => Math.min(longestClipNumber, Math.max(1, clip))

const past = ({ runsOn }: Camera, clip: number): number => inRange(runsOn ? clip : clip + 1)

/** After a clip was kept: its number is used up, and a higher one that was used before stays so. */
export const countedPast = (camera: Camera, clip: number): Camera => ({
  ...camera,
  next: Math.max(camera.next, past(camera, clip)),
})

/**
 * After an attempt was marked as filmed, given another number, or marked as not filmed: it counts on from the number last
 * marked; the number of the last one is free again when its mark is taken back.
 */
export function cameraAfter(camera: Camera, before: FilmedItem | null, after: FilmedItem | null): Camera {
  if (after) return before?.clip === after.clip ? camera : { ...camera, next: past(camera, after.clip) }
  return before && camera.next === past(camera, before.clip) ? { ...camera, next: before.clip } : camera
}

/** After the coach said whether the camera films on; `marked` is the clip of the attempt that is open, where it was filmed. */
export const withRunsOn = (camera: Camera, runsOn: boolean, marked: FilmedItem | null): Camera => ({
  runsOn,
  next: marked ? past({ ...camera, runsOn }, marked.clip) : camera.next,
})
