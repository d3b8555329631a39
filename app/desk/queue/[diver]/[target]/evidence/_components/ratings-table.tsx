import { ScrollRegion } from '@/app/_components/ui/scroll-region'
import type { RatingCell, RatingsView } from '../loader'

function Rating({ cell, critical }: { cell: RatingCell | null; critical: boolean }) {
  if (!cell)
    return (
      <span className="text-soft">
        <span aria-hidden="true">·</span>
        <span className="sr-only">not rated</span>
      </span>
    )
  const tone = cell.short ? (critical ? 'font-bold text-coral' : 'font-bold') : cell.imputed ? 'text-soft' : ''
  return (
    <span className={tone}>
      {cell.imputed ? `(${cell.rating})` : cell.rating}
      {cell.short ? <span className="sr-only"> falls short</span> : null}
    </span>
  )
}

/** Who rated the dive what: phases down, a column for what is asked and one for each coach. */
export function RatingsTable({ ratings }: { ratings: RatingsView }) {
  return (
    <ScrollRegion label="What was rated, by phase">
      <p className="pb-1 text-13 text-soft">
        {ratings.coaches.map(({ id, initials, name, how }) => (
          <span key={id} className="block">
            {initials}: {name}, {how === 'deck' ? 'on deck' : 'on video'}
          </span>
        ))}
      </p>
      <table className="ratings-table">
        <caption className="sr-only">What was rated, by phase</caption>
        <thead>
          <tr>
            <th scope="col">Phase</th>
            <th scope="col">Criterion</th>
            <th scope="col">Asked</th>
            {ratings.coaches.map(({ id, initials, name, how }) => (
              <th key={id} scope="col">
                <abbr title={`${name}, ${how}`}>{initials}</abbr>
              </th>
            ))}
          </tr>
        </thead>
        {ratings.phases.map(({ phase, criteria }) => (
          <tbody key={phase}>
            {criteria.map(({ key, title, critical, asked, cells }, index) => (
              <tr key={key}>
                {index === 0 ? (
                  <th scope="rowgroup" rowSpan={criteria.length}>
                    {phase}
                  </th>
                ) : null}
                <th scope="row">
                  {title}
                  {critical ? <span className="text-soft"> · critical</span> : null}
                </th>
                <td>{asked || ''}</td>
                {cells.map((cell, column) => (
                  <td key={ratings.coaches[column]?.id}>
                    <Rating cell={cell} critical={critical} />
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        ))}
      </table>
    </ScrollRegion>
  )
}
