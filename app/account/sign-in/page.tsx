import type { Metadata } from 'next'
import { LogRow, PageHead, Section, Sheet } from '@/app/_components/ui/sheet'
import { SiteHeader } from '@/app/_components/ui/site-header'
import { Leftovers } from '@/app/deck/_components/leftovers'
import { productName, tagline } from '@/lib/platform/product'
import { signInAction } from '../actions'
import { SignInForm } from './_components/sign-in-form'
import { loadDemo } from './loader'

export const metadata: Metadata = { title: 'Sign in' }

interface SignInPageProps {
  readonly searchParams: Promise<{ next?: string | string[] }>
}

export default async function SignInPage({ searchParams }: SignInPageProps) {
  const { next } = await searchParams
  const demo = await loadDemo()
  return (
    <>
      <SiteHeader product={productName} items={[]} />
      <Sheet>
        <PageHead sentence={tagline} margin="Sign in" />
        <LogRow>
          <Leftovers />
          <SignInForm action={signInAction} next={typeof next === 'string' ? next : ''} />
        </LogRow>
        {demo ? (
          <Section title="The demo" aside="An invented coast: no real people, no real clubs.">
            <LogRow margin="Password">
              <code className="font-sans font-bold select-all">{demo.password}</code>, the same for all
            </LogRow>
            {demo.signIns.map((signIn) => (
              <LogRow key={signIn.email}>
                <span className="font-bold select-all">{signIn.email}</span>
                <span className="text-soft">
                  {' '}
                  · {signIn.name}, {signIn.roles}
                </span>
              </LogRow>
            ))}
          </Section>
        ) : null}
      </Sheet>
    </>
  )
}
