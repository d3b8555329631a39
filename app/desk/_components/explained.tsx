import { StatusDrop } from '@/app/_components/domain/status/status-mark'
import { Fold } from '@/app/_components/ui/fold'
import type { Status } from '@/lib/assessment/readiness/finding'
import { statusWord } from '@/lib/assessment/readiness/wording'

interface Node {
  readonly status: Status
  readonly sentence: string
  readonly why: string | null
  readonly children: readonly Node[]
  readonly metLine: string | null
}

interface LineProps {
  readonly node: Node
  /** Lines below which what follows is folded. */
  readonly open: number
}

function Line({ node, open }: LineProps) {
  const below = node.children.length > 0 || node.metLine ? <Below node={node} open={open - 1} /> : null
  return (
    <li className="py-1.5">
      <div className="flex gap-2">
        <StatusDrop status={node.status} />
        <div>
          <span>{node.sentence}</span> <span className="text-13 text-soft">{statusWord[node.status]}</span>
          {node.why ? <p className="text-13 text-soft">{node.why}</p> : null}
        </div>
      </div>
      {open > 1 || !below ? (
        below
      ) : (
        <div className="ml-6">
          <Fold summary={node.children.length === 1 ? 'Which' : `Which ${node.children.length}`}>{below}</Fold>
        </div>
      )}
    </li>
  )
}

function Below({ node, open }: LineProps) {
  return (
    <ul className="ml-6">
      {node.children.map((child) => (
        <Line key={`${child.status} ${child.sentence}`} node={child} open={open} />
      ))}
      {node.metLine ? <li className="py-1 text-13 text-soft">{node.metLine}.</li> : null}
    </ul>
  )
}

interface ExplainedProps {
  readonly node: Node
  readonly whole?: boolean
  /** How many levels of conditions are read out; what lies below them is folded. */
  readonly open?: number
}

/** A finding as a coach would say it: what binds, in sentences, with its marks; what is met beside it in one line. */
export function Explained({ node, whole = false, open = Number.POSITIVE_INFINITY }: ExplainedProps) {
  return (
    <ul className="measure">
      {whole || node.children.length === 0 ? (
        <Line node={node} open={open} />
      ) : (
        <>
          {node.children.map((child) => (
            <Line key={`${child.status} ${child.sentence}`} node={child} open={open} />
          ))}
          {node.metLine ? <li className="py-1 text-13 text-soft">{node.metLine}.</li> : null}
        </>
      )}
    </ul>
  )
}
