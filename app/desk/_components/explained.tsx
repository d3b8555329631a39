import { StatusDrop } from '@/app/_components/domain/status/status-mark'
import type { Status } from '@/lib/assessment/readiness/finding'
import { statusWord } from '@/lib/assessment/readiness/wording'

interface Node {
  readonly status: Status
  readonly sentence: string
  readonly why: string | null
  readonly children: readonly Node[]
  readonly metLine: string | null
}

function Line({ node }: { node: Node }) {
  return (
    <li className="py-1.5">
      <div className="flex gap-2">
        <StatusDrop status={node.status} />
        <div>
          <span>{node.sentence}</span> <span className="text-13 text-soft">{statusWord[node.status]}</span>
          {node.why ? <p className="text-13 text-soft">{node.why}</p> : null}
        </div>
      </div>
      {node.children.length > 0 || node.metLine ? <Below node={node} /> : null}
    </li>
  )
}

function Below({ node }: { node: Node }) {
  return (
    <ul className="ml-6">
      {node.children.map((child) => (
        <Line key={`${child.status} ${child.sentence}`} node={child} />
      ))}
      {node.metLine ? <li className="py-1 text-13 text-soft">{node.metLine}.</li> : null}
    </ul>
  )
}

/** A finding as a coach would say it: what binds, in sentences, with its marks; what is met beside it in one line. */
export function Explained({ node, whole = false }: { node: Node; whole?: boolean }) {
  return (
    <ul className="measure">
      {whole || node.children.length === 0 ? (
        <Line node={node} />
      ) : (
        <>
          {node.children.map((child) => (
            <Line key={`${child.status} ${child.sentence}`} node={child} />
          ))}
          {node.metLine ? <li className="py-1 text-13 text-soft">{node.metLine}.</li> : null}
        </>
      )}
    </ul>
  )
}
