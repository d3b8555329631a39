import { Fold } from '@/app/_components/ui/fold'
import { LogRow } from '@/app/_components/ui/sheet'

interface CriterionRowProps {
  readonly criterion: {
    readonly key: string
    readonly title: string
    readonly statement: string
    readonly critical: boolean
    readonly anchors: readonly string[]
    readonly expects: string
  }
}

/** A criterion: what it says, what each level asks of it, what is seen at each rating. */
export function CriterionRow({ criterion }: CriterionRowProps) {
  return (
    <LogRow id={criterion.key} margin={criterion.critical ? 'critical' : undefined}>
      <h3 className="font-bold">{criterion.title}</h3>
      <p className="measure">{criterion.statement}</p>
      <p className="text-13 text-soft">asks {criterion.expects}</p>
      <Fold summary="What is seen at each rating">
        <ol start={0} className="measure list-decimal pl-6">
          {criterion.anchors.map((anchor) => (
            <li key={anchor}>{anchor}</li>
          ))}
        </ol>
      </Fold>
    </LogRow>
  )
}
