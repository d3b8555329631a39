import type { ReactNode } from 'react'
import { productName } from '@/lib/platform/product'
import { Button } from '../ui/button'
import { Sheet } from '../ui/sheet'
import { SiteHeader } from '../ui/site-header'

interface PageFrameProps {
  readonly frame: {
    readonly who: string
    readonly where: string
    readonly ways: readonly { readonly href: string; readonly label: string }[]
  }
  /** The way that this page belongs to. */
  readonly current: string
  readonly signOut: () => Promise<void>
  readonly children: ReactNode
}

/** A gated page: the ways through at the top, then one sheet. */
export function PageFrame({ frame, current, signOut, children }: PageFrameProps) {
  return (
    <>
      <SiteHeader
        product={productName}
        items={frame.ways.map((way) => ({ ...way, current: way.href === current }))}
        who={frame.who}
        club={frame.where}
        signOut={
          <form action={signOut}>
            <Button tone="text">Sign out</Button>
          </form>
        }
      />
      <Sheet>{children}</Sheet>
    </>
  )
}
