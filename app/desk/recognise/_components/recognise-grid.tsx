import { DiveNumber } from '@/app/_components/domain/dive/dive-number'
import { FormTick } from '@/app/_components/ui/action-fields'
import { ScrollRegion } from '@/app/_components/ui/scroll-region'
import type { Cell, GridRow } from '../loader'

interface RecogniseGridProps {
  readonly caption: string
  readonly divers: readonly { readonly id: string; readonly name: string; readonly href: string }[]
  readonly rows: readonly GridRow[]
}

function Tick({ row, cell }: { row: GridRow; cell: Cell }) {
  if (cell.word === null)
    return (
      <FormTick
        name={`tick ${cell.diver} ${row.key}`}
        label={
          <span className="sr-only">
            {cell.name}, {row.dive} {row.title}, {row.place}
          </span>
        }
      />
    )
  return cell.href ? <a href={cell.href}>{cell.word}</a> : <span className="text-soft">{cell.word}</span>
}

/** Divers across, skills down; a word stands where nothing is left to recognise. */
export function RecogniseGrid({ caption, divers, rows }: RecogniseGridProps) {
  return (
    <ScrollRegion label={caption}>
      <table className="tick-grid">
        <caption className="sr-only">{caption}</caption>
        <thead>
          <tr>
            <th scope="col">Skill</th>
            {divers.map(({ id, name, href }) => (
              <th key={id} scope="col">
                <a href={href}>{name}</a>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.key}>
              <th scope="row">
                {row.dive ? <DiveNumber>{row.dive}</DiveNumber> : null} {row.title}{' '}
                <span className="text-soft">{row.place}</span>
              </th>
              {row.cells.map((cell) => (
                <td key={cell.diver}>
                  <Tick row={row} cell={cell} />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollRegion>
  )
}
