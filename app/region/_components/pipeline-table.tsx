import { ScrollRegion } from '@/app/_components/ui/scroll-region'

interface Cell {
  readonly href: string
  readonly count: number
}

interface Row {
  readonly key: string
  readonly club: string
  readonly step: string
  readonly cells: readonly Cell[]
}

interface PipelineTableProps {
  readonly caption: string
  readonly stepHead: string
  readonly figures: readonly { readonly label: string; readonly sortHref: string; readonly sorted: boolean }[]
  readonly rows: readonly Row[]
}

/** Club by step, each number a way to its list; the last row adds the lists up. Sorting is a link, without JavaScript. */
export function PipelineTable({ caption, stepHead, figures, rows }: PipelineTableProps) {
  return (
    <ScrollRegion label={caption}>
      <table className="pipeline-table">
        <caption className="sr-only">{caption}</caption>
        <thead>
          <tr>
            <th scope="col">Club</th>
            <th scope="col">{stepHead}</th>
            {figures.map((figure) => (
              <th
                key={figure.label}
                scope="col"
                className="is-number"
                aria-sort={figure.sorted ? 'descending' : undefined}
              >
                <a href={figure.sortHref}>{figure.label}</a>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.key}>
              <th scope="row">{row.club}</th>
              <td>{row.step}</td>
              {row.cells.map((cell, index) => (
                <td key={figures[index]?.label} className="is-number">
                  {cell.count === 0 ? (
                    <span className="text-soft">0</span>
                  ) : (
                    <a href={cell.href} aria-label={`${cell.count} ${figures[index]?.label}: ${row.club}, ${row.step}`}>
                      {cell.count}
                    </a>
                  )}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row" colSpan={2}>
              all clubs
            </th>
            {figures.map((figure, index) => (
              <td key={figure.label} className="is-number">
                {rows.reduce((sum, row) => sum + (row.cells[index]?.count ?? 0), 0)}
              </td>
            ))}
          </tr>
        </tfoot>
      </table>
    </ScrollRegion>
  )
}
