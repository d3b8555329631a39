import type { Metadata } from 'next'
import { GuideSheet } from '@/app/curriculum/_components/guide-sheet'
import { OpenFrame } from '../../_components/open-frame'
import { loadOpenProgramme, robotsOf } from '../loader'
import { loadOpenGuide } from './loader'

interface OpenGuideProps {
  readonly params: Promise<{ programme: string; pair: string }>
  readonly searchParams: Promise<{ level?: string | string[] }>
}

export async function generateMetadata({ params }: OpenGuideProps): Promise<Metadata> {
  const { programme, pair } = await params
  const { name } = await loadOpenGuide(programme, pair)
  return { title: name, robots: robotsOf(await loadOpenProgramme(programme)) }
}

export default async function OpenGuidePage({ params, searchParams }: OpenGuideProps) {
  const { programme, pair } = await params
  const { level } = await searchParams
  const guide = await loadOpenGuide(programme, pair, typeof level === 'string' ? level : undefined)
  return (
    <OpenFrame programme={programme}>
      <GuideSheet guide={guide} />
    </OpenFrame>
  )
}
