'use client'

import { useLayoutEffect } from 'react'

/** Scrolls the region around an element sideways, so that the element is in its middle when the page opens; the page stays. */
export function InSight({ id }: { id: string }) {
  useLayoutEffect(() => {
    const element = document.getElementById(id)
    const region = element?.closest('.table-scroll')
    if (!element || !region) return
    const here = element.getBoundingClientRect()
    const frame = region.getBoundingClientRect()
    region.scrollLeft += here.left - frame.left - (frame.width - here.width) / 2
  }, [id])
  return null
}
