import type { Metadata } from 'next'
import { FormField } from '@/app/_components/ui/action-fields'
import { ActionForm } from '@/app/_components/ui/action-form'
import { Notice } from '@/app/_components/ui/notice'
import { Beside, LogRow, PageHead, Section, Sheet } from '@/app/_components/ui/sheet'
import { SiteHeader } from '@/app/_components/ui/site-header'
import { productName } from '@/lib/platform/product'
import { acceptAction, joinAction } from './actions'
import { type InvitedPage, loadInvited } from './loader'

export const metadata: Metadata = { title: 'Invitation', referrer: 'no-referrer' }

interface InvitationPageProps {
  readonly params: Promise<{ token: string }>
}

function Accept({ page, name, refusal }: { page: InvitedPage; name: string; refusal: string | null }) {
  if (refusal)
    return (
      <Beside>
        <Notice tone="note">
          You are signed in as {name}. {refusal}
        </Notice>
      </Beside>
    )
  return (
    <LogRow>
      <ActionForm
        action={acceptAction}
        submit={`Accept as ${name}`}
        refused="Not accepted"
        hidden={{ token: page.token }}
      >
        <p className="measure">
          You are signed in as {name}. If this link is not for you, sign out before its owner opens it.
        </p>
      </ActionForm>
    </LogRow>
  )
}

function Join({ token }: { token: string }) {
  return (
    <Section
      title="A new account"
      aside={<a href={`/account/sign-in?next=/account/invited/${token}`}>I have an account: sign in</a>}
    >
      <LogRow>
        <ActionForm action={joinAction} submit="Accept" refused="Not accepted" className="max-w-sm" hidden={{ token }}>
          <FormField label="Your name" name="name" autoComplete="name" required />
          <FormField label="Initials" name="initials" hint="They stand beside what you rate." maxLength={4} required />
          <FormField label="E-mail address" name="email" type="email" autoComplete="username" required />
          <FormField
            label="Password"
            name="password"
            type="password"
            autoComplete="new-password"
            hint="At least twelve characters."
            required
          />
          <FormField label="The password again" name="again" type="password" autoComplete="new-password" required />
        </ActionForm>
      </LogRow>
    </Section>
  )
}

export default async function InvitationPage({ params }: InvitationPageProps) {
  const page = await loadInvited((await params).token)
  return (
    <>
      <SiteHeader product={productName} items={[]} />
      <Sheet>
        <PageHead sentence={page.sentence} margin="Invitation">
          {page.state === 'open' ? 'The link works once.' : null}
        </PageHead>
        {page.state !== 'open' ? null : page.who ? (
          <Accept page={page} name={page.who.name} refusal={page.who.refusal} />
        ) : (
          <Join token={page.token} />
        )}
      </Sheet>
    </>
  )
}
