import type { ReactNode } from 'react'

/** What is sound and need not be read, folded into one line. Opens without JavaScript, and on paper. */
export function Fold({ summary, children, open }: { summary: ReactNode; children: ReactNode; open?: boolean }) {
  return (
    <details className="fold" open={open}>
      <summary>{summary}</summary>
      <div className="pt-2">{children}</div>
    </details>
  )
}
