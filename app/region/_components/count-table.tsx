import { ScrollRegion } from '@/app/_components/ui/scroll-region'
import type { CountTable as Table } from '../loader'

/** Rows by figures, each number a way to its list; the last row adds them up. Sorting is a link, without JavaScript. */
export function CountTable({ caption, table }: { caption: string; table: Table }) {
  const { heads, columns, rows, totals } = table
  return (
    <ScrollRegion label={caption}>
      <table className="pipeline-table">
        <caption className="sr-only">{caption}</caption>
        <thead>
          <tr>
            {heads.map((head) => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
            {columns.map(({ label, sortHref, sorted }) => (
              <th key={label} scope="col" className="is-number" aria-sort={sorted ? 'descending' : undefined}>
                <a href={sortHref}>{label}</a>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ labels, cells }) => (
            <tr key={labels.join(' ')}>
              {labels.map((label, index) =>
                index === 0 ? (
                  <th key={label} scope="row">
                    {label}
                  </th>
                ) : (
                  <td key={label}>{label}</td>
                ),
              )}
              {cells.map(({ count, href }, index) => (
                <td key={columns[index]?.label} className="is-number">
                  {count === 0 ? (
                    <span className="text-soft">0</span>
                  ) : (
                    <a href={href} aria-label={`${count} ${columns[index]?.label}: ${labels.join(', ')}`}>
                      {count}
                    </a>
                  )}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
        {totals ? (
          <tfoot>
            <tr>
              <th scope="row" colSpan={heads.length}>
                all of these
              </th>
              {totals.map((total, index) => (
                <td key={columns[index]?.label} className="is-number">
                  {total}
                </td>
              ))}
            </tr>
          </tfoot>
        ) : null}
      </table>
    </ScrollRegion>
  )
}
