import type { ReactNode } from 'react'
import { writeRoute } from '../state/address'
import { Top } from './top'

/** An address that leads nowhere any more. */
export function Lost({ children }: { children: ReactNode }) {
  return (
    <>
      <Top back={{ to: { at: 'squads' }, label: 'Back to the divers' }}>
        <h1 className="text-18">Not here</h1>
      </Top>
      <main id="main" className="deck-page">
        <p className="py-3">{children}</p>
        <a className="button" href={writeRoute({ at: 'squads' })}>
          To the divers
        </a>
      </main>
    </>
  )
}
