import { sayApart, sayTime } from '@/lib/assessment/mark/wording'
import { ScrollRegion } from '../../../ui/scroll-region'
import type { MarksView } from './marks-view'

/** Several coaches' marks beside each other: where they differ, and by how much. */
export function MarksTable({ marks }: { marks: MarksView }) {
  return (
    <ScrollRegion label="Coaches’ marks beside each other">
      <table className="marks-beside">
        <thead>
          <tr>
            <th scope="col">begins</th>
            {marks.coaches.map(({ id, name, initials }) => (
              <th key={id} scope="col">
                <abbr title={name} className="no-underline">
                  {initials}
                </abbr>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {marks.lines.map(({ key, marks: cells }) => (
            <tr key={key}>
              <th scope="row">{key}</th>
              {cells.map((cell, index) => (
                <td key={marks.coaches[index]?.id ?? index}>
                  {cell ? sayTime(cell.mark.atMs) : <span className="text-soft">not marked</span>}
                  {cell?.apart ? <span className="text-soft"> · {sayApart(cell.apart)}</span> : null}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollRegion>
  )
}
