/** An observation as one of the views that its coach had of an attempt, and which of them it corrects. */
export interface View {
  readonly id: string
  readonly attempt: string
  readonly coach: string
  readonly supersedes: string | null
}

/** A moment as it is kept: of which observation, and what of which film. Milliseconds; `endMs` null plays to the end. */
export interface KeptMoment {
  readonly id: string
  readonly observation: string
  readonly link: string
  readonly startMs: number
  readonly endMs: number | null
  /** It was linked after its observation was kept, and is no part of it (decision 23). */
  readonly linked: boolean
}

/** A moment with all copies of it. */
export type Copied<Moment extends KeptMoment = KeptMoment> = Moment & {
  readonly view: View
  /** Ids of the same stretch of film in all views that the coach had of the attempt, oldest view first. */
  readonly copies: readonly string[]
  /** Whether it is shown: it is the newest of them, and its view is in force or it was linked beside the view. */
  readonly shown: boolean
}

/** How many views of its coach came before one. */
function depthOf(view: View, views: ReadonlyMap<string, View>): number {
  const met = new Set<string>()
  let before = view.supersedes
  while (before !== null && !met.has(before)) {
    met.add(before)
    before = views.get(before)?.supersedes ?? null
  }
  return met.size
}

const filmOf = ({ link, startMs, endMs }: KeptMoment, { attempt, coach }: View): string =>
  JSON.stringify([attempt, coach, link, startMs, endMs])

/**
 * Moments with their copies: a correction takes a moment along under a new id, and what was marked, measured or asked in one
 * copy belongs to all. `views` are all observations of the attempts; a moment of another observation is left out. In
 * the order of the views, the first view of each coach first.
 */
export function withCopies<Moment extends KeptMoment>(
  views: readonly View[],
  moments: readonly Moment[],
): Copied<Moment>[] {
  const viewOf = new Map(views.map((view) => [view.id, view]))
  const replaced = new Set(views.map(({ supersedes }) => supersedes))
  const known = moments.flatMap((moment) => {
    const view = viewOf.get(moment.observation)
    return view ? [{ moment, view, depth: depthOf(view, viewOf) }] : []
  })
  known.sort((a, b) => a.depth - b.depth || (a.moment.id < b.moment.id ? -1 : 1))
  const films = new Map<string, string[]>()
  for (const { moment, view } of known) {
    const film = filmOf(moment, view)
    films.set(film, [...(films.get(film) ?? []), moment.id])
  }
  return known.map(({ moment, view }) => {
    const copies = films.get(filmOf(moment, view)) ?? [moment.id]
    const stands = moment.linked || !replaced.has(view.id)
    return { ...moment, view, copies, shown: stands && copies.at(-1) === moment.id }
  })
}
