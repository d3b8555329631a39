import type { ReactNode } from 'react'

export interface NavItem {
  readonly href: string
  readonly label: string
  readonly current: boolean
  /** How much waits there; shown after the label when above 0. */
  readonly waiting?: number
}

interface SiteHeaderProps {
  readonly product: string
  readonly items: readonly NavItem[]
  /** Who is signed in, and where: "Sanna Oduya", "Saltmarsh Diving Club". */
  readonly who?: string
  readonly club?: string
  /** A form with a button, or a link to sign in. */
  readonly signOut?: ReactNode
}

/** First row of the log book: the name hangs in the margin, the ways through stand beside it. No JavaScript. */
export function SiteHeader({ product, items, who, club, signOut }: SiteHeaderProps) {
  return (
    <header className="site-header border-b border-edge bg-sheet">
      <div className="frame site-header-grid">
        <a href="/" className="site-name">
          {product}
        </a>
        <nav aria-label="Main" className="site-nav">
          <ul>
            {items.map(({ href, label, current, waiting }) => (
              <li key={href}>
                <a href={href} aria-current={current ? 'page' : undefined} className="site-link">
                  {label}
                  {waiting ? <span className="site-waiting">{waiting}</span> : null}
                </a>
              </li>
            ))}
          </ul>
        </nav>
        {who ? (
          <div className="site-who">
            <span className="truncate">
              {who}
              {club ? <span className="site-where text-soft"> · {club}</span> : null}
            </span>
            {signOut}
          </div>
        ) : (
          signOut
        )}
      </div>
    </header>
  )
}
