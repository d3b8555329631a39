import { ScrollRegion } from '@/app/_components/ui/scroll-region'

/** One quantity in both films, in words. */
export interface NumbersRow {
  readonly name: string
  readonly first: string
  readonly second: string
  readonly difference: string
  /** The films can tell the difference. */
  readonly told: boolean
}

/** Quantities of one kind, and what they rest on. */
export interface NumbersGroup {
  readonly title: string
  readonly aside: string
  readonly rows: readonly NumbersRow[]
}

interface NumbersProps {
  readonly groups: readonly NumbersGroup[]
  readonly wanting: string | null
  /** Whose the columns are. */
  readonly names: readonly [string, string]
}

function Cells({ row }: { row: NumbersRow }) {
  return (
    <>
      <td>{row.first}</td>
      <td>{row.second}</td>
    </>
  )
}

function Told({ row }: { row: NumbersRow }) {
  return (
    <tr>
      <th scope="row">
        {row.name}
        <b className="block">{row.difference}</b>
      </th>
      <Cells row={row} />
    </tr>
  )
}

/** What the films cannot tell stands together under why: what is said of the first of them is said of all with the same words. */
function Untold({ rows }: { rows: readonly NumbersRow[] }) {
  const reasons = [...new Set(rows.map(({ difference }) => difference))]
  return reasons.map((why) => (
    <tbody key={why}>
      <tr>
        <th scope="rowgroup" colSpan={3} className="text-soft">
          {why.charAt(0).toUpperCase() + why.slice(1)}:
        </th>
      </tr>
      {rows
        .filter(({ difference }) => difference === why)
        .map((row) => (
          <tr key={row.name}>
            <th scope="row">{row.name}</th>
            <Cells row={row} />
          </tr>
        ))}
    </tbody>
  ))
}

/** What differs between two films, in numbers, and what they cannot tell. */
export function Numbers({ groups, wanting, names }: NumbersProps) {
  return (
    <section aria-label="In numbers" className="compared-numbers">
      <h3 className="font-bold">In numbers</h3>
      {groups.map(({ title, aside, rows }) => (
        <ScrollRegion key={title} label={`${title} of both`}>
          <table className="numbers-table">
            <caption>
              {title} <span className="text-soft">{aside}</span>
            </caption>
            <thead>
              <tr>
                <th scope="col">
                  <span className="sr-only">What</span>
                </th>
                <th scope="col">
                  First<span className="sr-only">: {names[0]}</span>
                </th>
                <th scope="col">
                  Second<span className="sr-only">: {names[1]}</span>
                </th>
              </tr>
            </thead>
            <tbody>
              {rows
                .filter(({ told }) => told)
                .map((row) => (
                  <Told key={row.name} row={row} />
                ))}
            </tbody>
            <Untold rows={rows.filter(({ told }) => !told)} />
          </table>
        </ScrollRegion>
      ))}
      {wanting ? <p className="measure text-soft">{wanting}</p> : null}
      {groups.length > 0 ? (
        <p className="measure text-13 text-soft">
          ± is the 95 % interval. Where two intervals meet, the film cannot show which is more.
        </p>
      ) : null}
    </section>
  )
}
