'use client'

import type { RefObject } from 'react'
import { nameKept } from '@/lib/assessment/measure/wording-taken'
import type { SavedMeasure } from './measures-view'
import { ResultsList } from './results-list'

interface SavedMeasuresProps {
  readonly list: RefObject<HTMLUListElement | null>
  readonly saved: readonly SavedMeasure[]
  readonly shown: string | null
  readonly pending: boolean
  readonly onShow: (measure: SavedMeasure | null) => void
  readonly onTakeBack: (measure: SavedMeasure) => void
}

/** The measures that were kept, each coach's: shown on the frame again, or taken back by whoever took them. */
export function SavedMeasures({ list, saved, shown, pending, onShow, onTakeBack }: SavedMeasuresProps) {
  return (
    <ul ref={list} tabIndex={-1} className="saved-measures" aria-label="Measures that were kept">
      {saved.map((measure) => {
        const { id, coach, own, taken, results, cautions, suggests } = measure
        const name = nameKept(taken)
        const isShown = id === shown
        return (
          <li key={id}>
            <p className="flex flex-wrap items-baseline justify-between gap-x-4">
              <span>
                <b>{name}</b> <span className="text-soft">· {coach.name}</span>
              </span>
              <span className="flex gap-4">
                {taken.kind === 'flight' ? null : (
                  <button
                    type="button"
                    className="button button-text"
                    aria-label={`${isShown ? 'Hide' : 'Show'} ${name} by ${coach.name}`}
                    onClick={() => onShow(isShown ? null : measure)}
                  >
                    {isShown ? 'Hide' : 'Show'}
                  </button>
                )}
                {own ? (
                  <button
                    type="button"
                    className="button button-text"
                    aria-label={`Take back ${name}`}
                    aria-disabled={pending}
                    onClick={() => onTakeBack(measure)}
                  >
                    Take back
                  </button>
                ) : null}
              </span>
            </p>
            <ResultsList results={results} cautions={cautions} />
            {suggests.map((suggestion) => (
              <p key={suggestion} className="text-13">
                {suggestion}
              </p>
            ))}
          </li>
        )
      })}
    </ul>
  )
}
