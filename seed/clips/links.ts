import { tell } from './dive'
import { clips } from './dives'

/** A moment of one of our own films: its path on this server, and the seconds from the press to under water. */
export interface ClipLink {
  readonly link: string
  readonly start: number
  readonly end: number
  readonly sound: boolean
  /** What a coach should see. */
  readonly shows: string
}

/** The films of a dive, by its number, from a board of so many metres; none for a dive that was not drawn. */
export function clipLinks(dive: string, height: number | null): ClipLink[] {
  return clips
    .filter((clip) => clip.dive === dive && clip.simulated.height === height)
    .map(({ name, shows, sound, simulated }) => {
      const { takeOff, entry } = tell(simulated)
      const tenths = (seconds: number) => Math.round(seconds * 10) / 10
      return { link: `/media/clips/${name}.webm`, start: tenths(takeOff - 0.7), end: tenths(entry + 0.5), sound, shows }
    })
}
