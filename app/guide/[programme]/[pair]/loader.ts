import { notFound } from 'next/navigation'
import { type GuideView, viewGuide } from '@/app/curriculum/[pair]/loader'
import { readOpenExemplars } from '@/lib/assessment/store/exemplars'
import type { PairKey } from '@/lib/curriculum/edition/curriculum'
import { loadOpenProgramme } from '../loader'

/** The guide of a skill at a place for anybody, while the programme's guides are open. */
export async function loadOpenGuide(programme: string, encoded: string, level?: string): Promise<GuideView> {
  const { curriculum, hrefOf } = await loadOpenProgramme(programme)
  const pair = curriculum.pairs.get(decodeURIComponent(encoded) as PairKey)
  if (!pair) notFound()
  const exemplars = await readOpenExemplars(programme)
  return viewGuide(pair, level, { curriculum, exemplars, hrefOf, base: hrefOf(pair.key) ?? '' })
}
