'use client'

import { saySeconds } from '../clip/frames'
import { type Lost, sayLost } from '../clip/say-lost'
import type { ComparedFilm } from './compared-film'
import { phaseAt } from './say'

interface DuoHeadProps {
  readonly film: ComparedFilm
  readonly which: string
  readonly shown: number | null
  readonly held: boolean
  readonly wanted: boolean
  readonly lost: Lost | null
  readonly want: () => void
}

/** Whose film it is, where it is, and what is wrong with it. */
export function DuoHead({ film, which, shown, held, wanted, lost, want }: DuoHeadProps) {
  const { file, host, href, range } = film.moment
  const phase = shown === null ? null : phaseAt(film.marks, shown)
  return (
    <div className="duo-head">
      <p>
        <span className="text-soft">{which}</span> <a href={film.href}>{film.name}</a>
      </p>
      {shown === null ? null : (
        <output className="clip-time text-soft" aria-live="off" data-media-time={shown}>
          {saySeconds(shown)}
          {phase ? ` · ${phase}` : ''}
          {held ? ' · held, its moment reaches no further' : ''}
        </output>
      )}
      {file !== null && !wanted ? (
        <p>
          <button type="button" className="button button-go" onClick={want}>
            Play it here, from {host}
          </button>
        </p>
      ) : null}
      {lost ? (
        <p role="status" className="duo-gone">
          {sayLost({ lost, host, isEvidence: true })} The other plays alone.
        </p>
      ) : null}
      {file === null ? (
        <p className="duo-gone">This is a page about a film, which plays at its own place only.</p>
      ) : null}
      {file === null || lost ? (
        <p>
          <a href={href} rel="noreferrer noopener" target="_blank">
            Open {range} {host === null ? 'in a new window' : `at ${host}`}
          </a>
        </p>
      ) : null}
    </div>
  )
}
