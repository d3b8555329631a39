import type { Metadata } from 'next'
import { PageFrame } from '@/app/_components/frame/page-frame'
import { Nothing, Notice } from '@/app/_components/ui/notice'
import { Beside, LogRow, PageHead, Section } from '@/app/_components/ui/sheet'
import { signOutAction } from '@/app/account/actions'
import { loadFrame } from '@/app/loader'
import { LeadForms } from './_components/lead-forms'
import { type ClubsPage, loadClubs } from './loader'

export const metadata: Metadata = { title: 'Clubs' }

interface ClubsPageProps {
  readonly searchParams: Promise<{ done?: string | string[] }>
}

const doneWords: Readonly<Record<string, string>> = {
  club: 'The club is there. Its head coach comes next.',
  scope: 'Kept: it holds for what is rated and signed from now on.',
  ended: 'The post is ended, and the ledger says so. What was seen and signed stays.',
}

function Club({ club, mayAdd }: { club: ClubsPage['clubs'][number]; mayAdd: boolean }) {
  const assistants = club.assistants === 1 ? '1 assistant' : `${club.assistants} assistants`
  return (
    <LogRow as="li" margin={assistants}>
      <b>{club.name}</b>
      {club.heads.length === 0 ? <p className="text-soft">No head coach yet.</p> : null}
      <ul>
        {club.heads.map(({ id, name, href }) => (
          <li key={id}>
            {name}, head coach
            {href && mayAdd ? (
              <>
                {' · '}
                <a href={href}>
                  Change or end<span className="sr-only"> of the post of {name}</span>
                </a>
              </>
            ) : null}
          </li>
        ))}
      </ul>
    </LogRow>
  )
}

export default async function ClubsOfProgrammePage({ searchParams }: ClubsPageProps) {
  const { done } = await searchParams
  const frame = await loadFrame()
  const page = await loadClubs()
  const said = typeof done === 'string' ? doneWords[done] : undefined
  return (
    <PageFrame frame={frame} current="/region/clubs" signOut={signOutAction}>
      <PageHead sentence={`The clubs of ${page.programme}, and who heads them.`} margin="Clubs" />
      {said ? (
        <Beside>
          <Notice tone="kept">{said}</Notice>
        </Beside>
      ) : null}
      <Section title="Clubs">
        {page.clubs.length === 0 ? (
          <Beside>
            <Nothing>No club yet: add the first one below, then invite its head coach.</Nothing>
          </Beside>
        ) : null}
        <ul>
          {page.clubs.map((club) => (
            <Club key={club.id} club={club} mayAdd={page.mayAdd} />
          ))}
        </ul>
      </Section>
      {page.mayAdd ? <LeadForms page={page} /> : null}
    </PageFrame>
  )
}
