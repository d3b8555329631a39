'use client'

import { markHint, sayTime } from '@/lib/assessment/mark/wording'
import { SaidLine } from '../said-line'
import type { MarksView } from './marks-view'
import type { Marking } from './use-marks'

interface MarksPanelProps {
  readonly marks: MarksView
  readonly marking: Marking
}

/** The phases of the dive: mark the frame that is shown, go to a mark, take it back. */
export function MarksPanel({ marks, marking }: MarksPanelProps) {
  const { markOf, goTo, mark, takeBack, pending, said, next } = marking
  if (marks.keys.length === 0)
    return <p className="text-soft">The curriculum in force does not name the phases of this skill.</p>
  return (
    <div>
      <table className="marks-list">
        <caption className="pb-1 text-start text-13 text-soft">
          Step to the first frame of a phase, then mark it: its number on the keyboard, or M for the next one.
        </caption>
        <tbody>
          {marks.keys.map((key, index) => {
            const own = markOf(key)
            return (
              <tr key={key}>
                <th scope="row">
                  <span className="text-13 text-soft">{index + 1} </span>
                  {key}
                  {markHint[key] ? <span className="block text-13 text-soft">{markHint[key]}</span> : null}
                </th>
                <td>
                  {own === null ? null : (
                    <>
                      <button
                        type="button"
                        className="button button-text"
                        aria-label={`Go to ${key}, ${sayTime(own.atMs)}`}
                        onClick={() => goTo(own)}
                      >
                        {sayTime(own.atMs)}
                      </button>{' '}
                      <button
                        type="button"
                        className="button button-text marks-back"
                        aria-label={`Take back ${key}`}
                        aria-disabled={pending}
                        onClick={(event) => {
                          const { nextElementSibling: stays } = event.currentTarget
                          if (!pending) takeBack(key, () => stays instanceof HTMLElement && stays.focus())
                        }}
                      >
                        ×
                      </button>{' '}
                    </>
                  )}
                  <button
                    type="button"
                    className={key === next ? 'button button-go' : 'button'}
                    aria-label={`Mark ${key}`}
                    onClick={() => mark(key)}
                  >
                    Mark
                  </button>
                </td>
              </tr>
            )
          })}
        </tbody>
      </table>
      <SaidLine said={said} pending={pending} />
      {marks.odd.length > 0 ? (
        <ul className="border-l-4 border-coral bg-coral-wash px-3 py-2 text-13">
          {marks.odd.map((odd) => (
            <li key={odd}>{odd}</li>
          ))}
        </ul>
      ) : null}
    </div>
  )
}
