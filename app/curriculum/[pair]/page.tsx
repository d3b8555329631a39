import type { Metadata } from 'next'
import { PageFrame } from '@/app/_components/frame/page-frame'
import { signOutAction } from '@/app/account/actions'
import { loadFrame } from '@/app/loader'
import { GuideSheet } from '../_components/guide-sheet'
import { SearchForm } from '../_components/search-form'
import { loadSkill } from './loader'

export const metadata: Metadata = { title: 'Guide' }

interface SkillPageProps {
  readonly params: Promise<{ pair: string }>
  readonly searchParams: Promise<{ level?: string | string[] }>
}

export default async function SkillPage({ params, searchParams }: SkillPageProps) {
  const frame = await loadFrame()
  const { level } = await searchParams
  const { guide, ways } = await loadSkill((await params).pair, typeof level === 'string' ? level : undefined)
  return (
    <PageFrame frame={frame} current="/curriculum" signOut={signOutAction}>
      <GuideSheet guide={guide} ways={ways}>
        <SearchForm />
      </GuideSheet>
    </PageFrame>
  )
}
