import type { ReactNode } from 'react'

/** What is sound and need not be read, folded into one line, on paper too unless it was opened. Opens without JavaScript. */
export function Fold({ summary, children, open }: { summary: ReactNode; children: ReactNode; open?: boolean }) {
  return (
    <details className="fold" open={open}>
      <summary>{summary}</summary>
      <div className="pt-2">{children}</div>
    </details>
  )
}
