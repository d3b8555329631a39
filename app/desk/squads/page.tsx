import type { Metadata } from 'next'
import { PageFrame } from '@/app/_components/frame/page-frame'
import { FormField } from '@/app/_components/ui/action-fields'
import { ActionForm } from '@/app/_components/ui/action-form'
import { LinkButton } from '@/app/_components/ui/button'
import { Nothing, Notice } from '@/app/_components/ui/notice'
import { Beside, LogRow, PageHead, Section } from '@/app/_components/ui/sheet'
import { signOutAction } from '@/app/account/actions'
import { loadFrame } from '@/app/loader'
import { ClubChoice } from '../people/_components/club-choice'
import { makeSquadAction } from './actions'
import { loadSquads, type SquadsPage } from './loader'

export const metadata: Metadata = { title: 'Squads' }

interface SquadsPageProps {
  readonly searchParams: Promise<Record<string, string | string[] | undefined>>
}

const headline = ({ divers, squads, club }: SquadsPage): string =>
  divers === 0
    ? `${club.clubName} has no diver yet.`
    : `${divers} ${divers === 1 ? 'diver' : 'divers'} in ${squads.length || 'no'} ${squads.length < 2 ? 'squad' : 'squads'} at ${club.clubName}.`

export default async function SquadsOfClubPage({ searchParams }: SquadsPageProps) {
  const { club, done, count } = await searchParams
  const frame = await loadFrame()
  const page = await loadSquads(club)
  const here = `?club=${page.club.club}`
  return (
    <PageFrame frame={frame} current="/desk/squads" signOut={signOutAction}>
      <PageHead sentence={headline(page)} margin="Squads" />
      <ClubChoice choice={page.choice} />
      {done === 'divers' ? (
        <Beside>
          <Notice tone="kept">
            {count} {count === '1' ? 'is' : 'are'} entered. What they hold already is{' '}
            <a href={`/desk/recognise${here}`}>recognised next</a>. Consent to video is on each diver’s own page.
          </Notice>
        </Beside>
      ) : null}
      {done === 'squad' ? (
        <Beside>
          <Notice tone="kept">Kept: the deck shows it when it next loads.</Notice>
        </Beside>
      ) : null}
      <Beside>
        <p className="flex flex-wrap gap-3 py-2">
          <LinkButton href={`/desk/squads/new-divers${here}`} tone={page.divers === 0 ? 'go' : 'plain'}>
            Enter divers
          </LinkButton>
          <LinkButton href={`/desk/recognise${here}`}>Recognise what they hold</LinkButton>
          <LinkButton href="/desk/transfers">
            Transfers{page.waiting > 0 ? ` · ${page.waiting} to answer` : ''}
          </LinkButton>
        </p>
      </Beside>
      <Section title="Squads">
        {page.squads.length === 0 ? (
          <Beside>
            <Nothing>No squad yet: name the first one below. The deck shows divers by squad.</Nothing>
          </Beside>
        ) : null}
        <ul>
          {page.squads.map(({ id, name, count: members }) => (
            <LogRow key={id} as="li" margin={`${members} ${members === 1 ? 'diver' : 'divers'}`}>
              <a href={`/desk/squads/${id}`} className="font-bold">
                {name}
              </a>
            </LogRow>
          ))}
          {page.without.length > 0 ? (
            <LogRow as="li" margin="in no squad">
              {page.without.map(({ id, name }, index) => (
                <span key={id}>
                  {index > 0 ? ', ' : ''}
                  <a href={`/desk/divers/${id}`}>{name}</a>
                </span>
              ))}
            </LogRow>
          ) : null}
        </ul>
      </Section>
      <Section title="Make a squad">
        <LogRow>
          <ActionForm
            action={makeSquadAction}
            submit="Make the squad"
            tone="plain"
            className="max-w-sm"
            hidden={{ club: page.club.club }}
          >
            <FormField label="Name" name="name" />
          </ActionForm>
        </LogRow>
      </Section>
    </PageFrame>
  )
}
