import type { Metadata } from 'next'
import { TreeLegend } from '@/app/_components/domain/tree/tree-mark'
import { PageFrame } from '@/app/_components/frame/page-frame'
import { PageHead } from '@/app/_components/ui/sheet'
import { signOutAction } from '@/app/account/actions'
import { FamilyWays } from '@/app/curriculum/tree/_components/family-ways'
import { TreeSheet } from '@/app/curriculum/tree/_components/tree-sheet'
import { CautionFoot } from '@/app/desk/_components/caution-foot'
import { loadFrame } from '@/app/loader'
import { loadDiverTree } from './loader'

export const metadata: Metadata = { title: 'Skill tree' }

interface DiverTreePageProps {
  readonly params: Promise<{ diver: string; family: string }>
  readonly searchParams: Promise<{ at?: string | string[] }>
}

export default async function DiverTreePage({ params, searchParams }: DiverTreePageProps) {
  const frame = await loadFrame()
  const { diver, family } = await params
  const { at } = await searchParams
  const tree = await loadDiverTree(diver, family, typeof at === 'string' ? at : undefined)
  return (
    <PageFrame frame={frame} current="/desk/divers" signOut={signOutAction}>
      <PageHead sentence={tree.headline} margin={tree.diver.name}>
        <p>
          <a href={tree.diver.href}>{tree.diver.name}</a> · {tree.title}: {tree.counts}
        </p>
        <FamilyWays families={tree.families} current={tree.family} />
      </PageHead>
      <TreeSheet {...tree} legend={<TreeLegend />} />
      <CautionFoot about="dive" />
    </PageFrame>
  )
}
