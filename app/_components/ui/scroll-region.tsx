import type { ReactNode } from 'react'

/** What may be wider than the page scrolls by itself, by keyboard too. */
export function ScrollRegion({ label, children }: { label: string; children: ReactNode }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard (WCAG 2.1.1)
    <section className="table-scroll" tabIndex={0} aria-label={label}>
      {children}
    </section>
  )
}
