import type { ReactNode } from 'react'
import { DiveNumber } from '@/app/_components/domain/dive/dive-number'
import { nodeId, SkillTree, type TreeStep } from '@/app/_components/domain/tree/skill-tree'
import { Beside, LogRow, Section } from '@/app/_components/ui/sheet'
import type { FamilyDrawing } from '@/lib/curriculum/tree/draw-family'
import type { TreeRow } from '../[family]/loader'

export interface TreeSheetProps {
  readonly title: string
  readonly chosen: string | null
  readonly drawing: FamilyDrawing
  readonly steps: readonly TreeStep[]
  readonly bands: readonly { readonly place: string; readonly label: string; readonly rows: readonly TreeRow[] }[]
  readonly legend?: ReactNode
}

/** A family drawn, and as a list that says the same; on phones the list comes first. */
export function TreeSheet({ title, chosen, drawing, steps, bands, legend }: TreeSheetProps) {
  return (
    <div className="tree-page">
      {chosen ? (
        <Beside>
          <p className="no-print">
            <a href={`#${nodeId(chosen)}`}>{chosenName(bands, chosen)} in the drawing</a>
          </p>
        </Beside>
      ) : null}
      <div className="tree-drawn pt-7">
        <SkillTree title={title} drawing={drawing} steps={steps} chosen={chosen} />
        {legend ? <div className="tree-legend">{legend}</div> : null}
      </div>
      <Section title={`${title}, place by place`}>
        {bands.map(({ place, label, rows }) => (
          <LogRow key={place} margin={label}>
            <ul className="grid gap-x-8 lg:grid-cols-2">
              {rows.map((row) => (
                <TreeLine key={row.key} row={row} />
              ))}
            </ul>
          </LogRow>
        ))}
      </Section>
    </div>
  )
}

function chosenName(bands: TreeSheetProps['bands'], chosen: string): string {
  for (const { label, rows } of bands)
    for (const { key, dive, name } of rows) if (key === chosen) return `${dive ?? name}, ${label}`
  return ''
}

/** Of a diver's node how it stands is said; of the curriculum's what it rests on. The drawing says both. */
function TreeLine({ row }: { row: TreeRow }) {
  return (
    <li className="py-1">
      <a href={row.href} className="inline-block py-0.5">
        {row.dive ? <DiveNumber>{row.dive}</DiveNumber> : null} {row.name}
      </a>{' '}
      {row.state ? <span className="text-13 text-soft">{row.state}</span> : null}
      {row.because ? <p className="text-13 text-soft">{row.because}</p> : null}
      {row.state === null && row.restsOn.length > 0 ? (
        <p className="text-13 text-soft">rests on {row.restsOn.join('; ')}</p>
      ) : null}
    </li>
  )
}
