'use client'

import { Button, LinkButton } from '@/app/_components/ui/button'
import { DeckOpen } from './_components/deck-open'
import { Message } from './_components/message'
import { useHome } from './_components/use-home'
import { useNewVersion } from './_components/use-new-version'
import { useSnapshot } from './_components/use-snapshot'

const signIn = '/account/sign-in?next=/deck'

/** The deck: opens with what is on the device, asks for the snapshot, says what stands in the way. */
export default function DeckClient() {
  const snapshot = useSnapshot()
  const { roster, problem, loading, reload } = snapshot
  const home = useHome(roster?.snapshot.coach.id)
  const loadNewVersion = useNewVersion()
  if (roster && home)
    return (
      <DeckOpen
        key={home.coach}
        roster={roster}
        home={home}
        heardAt={snapshot.heardAt}
        reload={reload}
        problem={problem?.message ?? null}
        loading={loading}
        loadNewVersion={loadNewVersion}
      />
    )
  if (roster || !problem) return <Message title="Opening the deck…" />
  if (problem.kind === 'refused')
    return (
      <Message title="The deck is closed">
        <p role="status">{problem.message}</p>
        <LinkButton tone="go" href={signIn} className="deck-wide">
          Sign in to open the deck
        </LinkButton>
      </Message>
    )
  return (
    <Message title="The deck did not open">
      <p role="alert">
        {problem.message} What was kept on this phone is still there. Once you have opened the deck here with a network,
        it opens without one.
      </p>
      <Button tone="go" type="button" className="deck-wide" disabled={loading} onClick={reload}>
        Try again
      </Button>
    </Message>
  )
}
