import type { Metadata } from 'next'
import { PageFrame } from '@/app/_components/frame/page-frame'
import { PageHead } from '@/app/_components/ui/sheet'
import { signOutAction } from '@/app/account/actions'
import { loadFrame } from '@/app/loader'
import { SearchForm } from '../../_components/search-form'
import { FamilyWays } from '../_components/family-ways'
import { TreeSheet } from '../_components/tree-sheet'
import { loadFamilyTree } from './loader'

export const metadata: Metadata = { title: 'Skill tree' }

interface FamilyTreePageProps {
  readonly params: Promise<{ family: string }>
  readonly searchParams: Promise<{ at?: string | string[] }>
}

export default async function FamilyTreePage({ params, searchParams }: FamilyTreePageProps) {
  const frame = await loadFrame()
  const { at } = await searchParams
  const tree = await loadFamilyTree((await params).family, typeof at === 'string' ? at : undefined)
  return (
    <PageFrame frame={frame} current="/curriculum" signOut={signOutAction}>
      <PageHead sentence={tree.title} margin="skill tree">
        <p>What rests on what, from left to right; the places from the top board down to the floor.</p>
        <FamilyWays families={tree.families} current={tree.family} />
        <SearchForm />
      </PageHead>
      <TreeSheet {...tree} />
    </PageFrame>
  )
}
