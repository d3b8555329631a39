import { ArcLine } from '@/app/_components/domain/arc/arc'
import { ActionPanels } from '@/app/desk/_components/action-panels'
import type { ListRow } from '../loader'

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

/** One line: whom, why, and what can be done about it. `data-row` is what the keys move between. */
function ReviewRow({ row, back }: { row: ListRow; back: string }) {
  return (
    <li className="log-row review-row" data-row={row.id} tabIndex={-1} aria-label={`${row.diver}, ${row.about}`}>
      <div className="log-margin">{row.margin}</div>
      <div className="review-line">
        <div className="min-w-0">
          <p>
            <a href={row.href} className="text-18 font-bold" data-shortcut="o">
              {row.diver}
            </a>{' '}
            {capital(row.about)}
            {row.squads ? <span className="text-soft"> · {row.squads}</span> : null}
          </p>
          <p className="measure">{row.sentence}</p>
          {row.notes.map((note) => (
            <p key={note} className="measure text-13 text-soft">
              {note}
            </p>
          ))}
          <ActionPanels id={row.id} acts={row.acts} back={back} />
        </div>
        {row.arc ? (
          <div className="review-arc">
            <ArcLine title={row.arc.title} {...row.arc.subject} />
          </div>
        ) : null}
      </div>
    </li>
  )
}

/** The lines of a list, oldest first. */
export function ReviewRows({ rows, back }: { rows: readonly ListRow[]; back: string }) {
  return (
    <ul>
      {rows.map((row) => (
        <ReviewRow key={row.id} row={row} back={back} />
      ))}
    </ul>
  )
}
