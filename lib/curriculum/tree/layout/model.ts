/** Something to be placed: a label that hangs on its anchor, the height at which edges meet it. Lengths in px. */
export interface Block {
  readonly key: string
  /** Index of its band, from the top. */
  readonly band: number
  readonly width: number
  /** How far its first line reaches: an edge that leaves it begins after that. */
  readonly lead: number
  /** What it takes over and under its anchor. */
  readonly above: number
  readonly below: number
}

/** An edge between two blocks, from what comes before. */
export interface Link {
  readonly from: string
  readonly to: string
}

/** A placed block: its left edge, and the height of its anchor. */
export interface Spot {
  readonly key: string
  readonly column: number
  readonly x: number
  readonly y: number
}

/** A band over the whole width. */
export interface BandSpan {
  readonly top: number
  readonly bottom: number
}

/** An edge as SVG path data: `M`, then level runs `H` and cubic curves `C` with level ends. */
export interface DrawnLink extends Link {
  readonly path: string
}

/** A banded, layered drawing. */
export interface Layout {
  readonly width: number
  readonly height: number
  readonly bands: readonly BandSpan[]
  readonly spots: readonly Spot[]
  readonly links: readonly DrawnLink[]
}

/** Where an edge stands in a column: at its block, or passing (no block). */
export interface Stop {
  readonly block: Block | null
  readonly column: number
  readonly band: number
  readonly above: number
  readonly below: number
}

/** A graph cut into columns: every segment joins stops of neighbouring columns. Stops are known by their index. */
export interface Columns {
  readonly count: number
  readonly stops: readonly Stop[]
  readonly segments: readonly (readonly [number, number])[]
  /** For each link, in their order, the stops that it runs through. */
  readonly routes: readonly (readonly number[])[]
}

/** The stops of each column from top to bottom, by bands. */
export type Order = readonly (readonly number[])[]
