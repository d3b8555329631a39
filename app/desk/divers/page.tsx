import type { Metadata } from 'next'
import { PageFrame } from '@/app/_components/frame/page-frame'
import { Nothing } from '@/app/_components/ui/notice'
import { Beside, LogRow, PageHead, Section } from '@/app/_components/ui/sheet'
import { signOutAction } from '@/app/account/actions'
import { loadFrame } from '@/app/loader'
import { loadDivers } from './loader'

export const metadata: Metadata = { title: 'Divers' }

export default async function DiversPage() {
  const frame = await loadFrame()
  const { rows, clubs } = await loadDivers()
  const byClub = [...new Set(rows.map((row) => row.club))]
  return (
    <PageFrame frame={frame} current="/desk/divers" signOut={signOutAction}>
      <PageHead
        sentence={
          rows.length === 0
            ? 'No diver is entered yet.'
            : `${rows.length} ${rows.length === 1 ? 'diver' : 'divers'}${clubs > 1 ? ` in ${clubs} clubs` : ''}, and where each stands.`
        }
        margin="Divers"
      />
      {rows.length === 0 ? (
        <Beside>
          <Nothing>A head coach enters the divers of a club, under Squads.</Nothing>
        </Beside>
      ) : null}
      {byClub.map((club) => (
        <Section key={club} title={club}>
          <ul>
            {rows
              .filter((row) => row.club === club)
              .map((row) => (
                <LogRow key={row.href} as="li" margin={row.squads}>
                  <a href={row.href} className="font-bold">
                    {row.name}
                  </a>
                  <span className="text-soft"> · {row.level}</span>
                  {row.ready.length > 0 ? <span> · ready for {row.ready.join(' and ')}</span> : null}
                  {row.incidents > 0 ? <span className="text-coral"> · incident to clear</span> : null}
                  {row.askConsent ? (
                    <span>
                      {' '}
                      · <a href={`${row.href}/safety`}>consent to a record is missing</a>
                    </span>
                  ) : null}
                  {row.standsDown ? <span className="text-coral"> · stood down</span> : null}
                </LogRow>
              ))}
          </ul>
        </Section>
      ))}
    </PageFrame>
  )
}
