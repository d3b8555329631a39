import type { ReactNode } from 'react'
import { Sheet } from '@/app/_components/ui/sheet'
import { SiteHeader } from '@/app/_components/ui/site-header'
import { productName } from '@/lib/platform/product'

/** A page that anybody reads: the way to all guides, and to the sign-in for those who have one. */
export function OpenFrame({ programme, children }: { programme: string; children: ReactNode }) {
  return (
    <>
      <SiteHeader
        product={productName}
        items={[{ href: `/guide/${programme}`, label: 'Guides', current: true }]}
        signOut={
          <a href="/account/sign-in" className="site-who">
            Sign in
          </a>
        }
      />
      <Sheet>{children}</Sheet>
    </>
  )
}
