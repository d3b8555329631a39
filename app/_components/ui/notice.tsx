import type { ReactNode } from 'react'

/** `kept`: something was done and is safe; `note`: good to know; `warning`: must not be missed. */
export type NoticeTone = 'note' | 'kept' | 'warning'

const toneClass: Record<NoticeTone, string> = {
  note: 'border-edge',
  kept: 'border-teal bg-teal-wash',
  warning: 'border-coral bg-coral-wash',
}

export function Notice({ tone = 'note', children }: { tone?: NoticeTone; children: ReactNode }) {
  return (
    <div role={tone === 'note' ? undefined : 'status'} className={`measure border-l-4 px-4 py-2.5 ${toneClass[tone]}`}>
      {children}
    </div>
  )
}

/** An empty list: what it means, and what to do next. */
export function Nothing({ children }: { children: ReactNode }) {
  return <p className="measure py-3 text-soft">{children}</p>
}
