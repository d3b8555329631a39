'use client'

import { Button, LinkButton } from '@/app/_components/ui/button'
import { DeckOpen } from './_components/deck-open'
import { Message } from './_components/message'
import { useSnapshot } from './_components/use-snapshot'

const signIn = '/account/sign-in?next=/deck'

/** The deck: asks for the snapshot, says what stands in the way, and opens. */
export default function DeckClient() {
  const { roster, problem, loading, reload } = useSnapshot()
  if (roster)
    return (
      <DeckOpen
        key={roster.snapshot.coach.id}
        roster={roster}
        reload={reload}
        problem={problem?.message ?? null}
        loading={loading}
      />
    )
  if (!problem) return <Message title="Opening the deck…" />
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
      <p role="alert">{problem.message} Nothing was recorded yet, so nothing is lost.</p>
      <Button tone="go" type="button" className="deck-wide" disabled={loading} onClick={reload}>
        Try again
      </Button>
    </Message>
  )
}
