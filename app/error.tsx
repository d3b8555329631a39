'use client'

import { Button, LinkButton } from './_components/ui/button'
import { PageHead, Sheet } from './_components/ui/sheet'

interface Failure {
  readonly error: Error & { readonly digest?: string }
  readonly reset: () => void
}

export default function PageError({ error, reset }: Failure) {
  return (
    <Sheet>
      <PageHead sentence="This page could not be shown." margin="error">
        <p>
          What was saved before is kept. Try once more; if it happens again, tell whoever runs the programme what you
          did
          {error.digest ? (
            <>
              {' '}
              and this number: <b className="text-ink">{error.digest}</b>
            </>
          ) : null}
          .
        </p>
        <p className="mt-5 flex gap-3">
          <Button type="button" tone="go" onClick={reset}>
            Try again
          </Button>
          <LinkButton href="/">Go to the start</LinkButton>
        </p>
      </PageHead>
    </Sheet>
  )
}
