/** A moment as it is shown: the link with its range, the film itself when it can be played here, and where it comes from. */
export interface ClipMoment {
  /** Opens the film at the moment, wherever it is. */
  readonly href: string
  /** The file to play; null for a page about a film. */
  readonly file: string | null
  /** The host that gives it, or null for this server's own. */
  readonly host: string | null
  readonly start: number
  readonly end: number | null
  readonly range: string
  readonly title: string
}
