'use client'

import PageError from './error'
import './globals.css'

/** Stands in for the whole document when the layout itself failed. */
export default function GlobalError(failure: Parameters<typeof PageError>[0]) {
  return (
    <html lang="en">
      <body>
        <title>Something went wrong</title>
        <PageError {...failure} />
      </body>
    </html>
  )
}
