import { StatusDrop } from '@/app/_components/domain/status/status-drop'
import { Fold } from '@/app/_components/ui/fold'
import type { ExplainedNode } from '@/lib/assessment/readiness/explain'
import { statusWord } from '@/lib/assessment/readiness/wording'

interface LineProps {
  readonly node: ExplainedNode
  /** What may be chosen from is folded. */
  readonly short: boolean
}

/** Lines beyond which a finding is read in its short form, where that is wanted. */
const shortFrom = 5

const leaves = (node: ExplainedNode): number =>
  node.children.length === 0 ? 1 : node.children.reduce((count, child) => count + leaves(child), 0)

function Line({ node, short }: LineProps) {
  const below = node.children.length > 0 || node.metLine ? <Below node={node} short={short} /> : null
  return (
    <li className="py-1.5">
      <div className="flex gap-2">
        <StatusDrop status={node.status} />
        <div>
          <span>{node.sentence}</span> <span className="text-13 text-soft">{statusWord[node.status]}</span>
          {node.why ? <p className="text-13 text-soft">{node.why}</p> : null}
        </div>
      </div>
      {short && node.choice && below ? (
        <div className="ml-6">
          <Fold summary={`${node.children.length} to choose from`}>{below}</Fold>
        </div>
      ) : (
        below
      )}
    </li>
  )
}

function Below({ node, short }: LineProps) {
  return (
    <ul className="ml-6">
      {node.children.map((child) => (
        <Line key={`${child.status} ${child.sentence}`} node={child} short={short} />
      ))}
      {node.metLine ? <li className="py-1 text-13 text-soft">{node.metLine}.</li> : null}
    </ul>
  )
}

interface ExplainedProps {
  readonly node: ExplainedNode
  readonly whole?: boolean
  /** Beside much else on a page: a long finding folds what may be chosen from. */
  readonly brief?: boolean
}

/** A finding as a coach would say it: what binds, in sentences, with its marks; what is met beside it in one line. */
export function Explained({ node, whole = false, brief = false }: ExplainedProps) {
  const short = brief && leaves(node) > shortFrom
  return (
    <ul className="measure">
      {whole || node.children.length === 0 ? (
        <Line node={node} short={short} />
      ) : (
        <>
          {node.children.map((child) => (
            <Line key={`${child.status} ${child.sentence}`} node={child} short={short} />
          ))}
          {node.metLine ? <li className="py-1 text-13 text-soft">{node.metLine}.</li> : null}
        </>
      )}
    </ul>
  )
}
