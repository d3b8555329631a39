import { fallsShort, fallsShortCritically } from '@/app/_components/domain/arc/falls-short'
import { ScrollRegion } from '@/app/_components/ui/scroll-region'
import type { PhaseView } from '@/lib/assessment/arc-subject'
import type { AttemptLine } from '../loader'

const verdictWord = { success: 'clean', failure: 'fell short', incomplete: 'incomplete' } as const

function Cell({ view }: { view: PhaseView }) {
  if (view.how === 'not watched' || view.rating === null) return <span className="text-soft">·</span>
  const short = fallsShort(view)
  const tone = fallsShortCritically(view)
    ? 'text-coral font-bold'
    : short
      ? 'font-bold'
      : view.how === 'imputed'
        ? 'text-soft'
        : ''
  return (
    <span className={tone} title={view.criterion ?? undefined}>
      {view.how === 'imputed' ? `(${view.rating})` : view.rating}
      {short ? <span className="sr-only"> falls short of {view.expected}</span> : null}
    </span>
  )
}

interface AttemptTableProps {
  readonly caption: string
  readonly rows: readonly AttemptLine[]
  /** Moments can be ticked, for the form around the table. */
  readonly choose?: boolean
}

/** Attempts by phases, newest first: the rating against what is asked, which stands in the second row of the head. */
export function AttemptTable({ caption, rows, choose }: AttemptTableProps) {
  const phases = rows[0]?.arc.phases ?? []
  return (
    <ScrollRegion label={caption}>
      <table className="attempt-table">
        <caption className="sr-only">{caption}</caption>
        <thead>
          <tr>
            <th scope="col">Day</th>
            <th scope="col">Coach</th>
            <th scope="col">Seen</th>
            {phases.map((phase) => (
              <th key={phase.phase} scope="col" className={phase.critical ? 'is-critical' : ''}>
                {phase.label}
              </th>
            ))}
            <th scope="col">Attempt</th>
            <th scope="col">Moment</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.id}>
              <th scope="row">{row.day}</th>
              <td>{row.coaches}</td>
              <td title={row.how}>{row.how === 'deck and video' ? 'both' : row.how}</td>
              {row.arc.phases.map((view) => (
                <td key={view.phase} className="is-rating">
                  <Cell view={view} />
                </td>
              ))}
              <td>
                {verdictWord[row.verdict]}
                {row.called ? '' : ', not called'}
              </td>
              <td>
                {row.moments.map(({ id, href, at, range }) => (
                  <span key={id} className="attempt-moment">
                    <a href={href} title={range} aria-label={range}>
                      {at}
                    </a>
                    {choose ? (
                      <input
                        type="checkbox"
                        name="moment"
                        value={id}
                        aria-label={`Compare the moment of ${row.day}, ${range}`}
                      />
                    ) : null}
                  </span>
                ))}
              </td>
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row" colSpan={3}>
              asked
            </th>
            {phases.map((phase) => (
              <td key={phase.phase} className="is-rating">
                {phase.expected || ''}
              </td>
            ))}
            <td colSpan={2} />
          </tr>
        </tfoot>
      </table>
    </ScrollRegion>
  )
}
