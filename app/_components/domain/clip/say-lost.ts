/**
 * Why a film does not play: its host stopped giving it, or the browser cannot read what came. Where it was refused at once
 * nobody can tell: a browser says the same of a film that is gone, of a page in its place, and of a film that it cannot play.
 */
export type Lost = 'broke off' | 'not readable' | 'refused'

/** What the code of a media element's error tells. */
export const lostBy = (code: number | undefined): Lost =>
  code === 2 ? 'broke off' : code === 3 ? 'not readable' : 'refused'

const why: Readonly<Record<Lost, string>> = {
  'broke off': 'only a part of the film came. Open this page again later, or open the film',
  'not readable': 'the film is there, but this browser cannot play it. Open it',
  refused: 'the film could not be played here. It may be gone, or this browser cannot play it: open it',
}

interface Gone {
  readonly lost: Lost
  /** Null for this server's own. */
  readonly host: string | null
  /** Whether something rests on the film, or it only shows what is meant. */
  readonly isEvidence: boolean
}

/** What is said in the place of a film that does not play. */
export function sayLost({ lost, host, isEvidence }: Gone): string {
  const said = `${why[lost]} ${host === null ? 'in a new window' : `at ${host}`} to see.`
  return isEvidence
    ? `Evidence not reachable: ${said} The moment stays on the record with all that rests on it.`
    : `${said.charAt(0).toUpperCase()}${said.slice(1)}`
}
