import { notFound } from 'next/navigation'
import { cache } from 'react'
import { type CurriculumPage, type HrefOf, viewFamily } from '@/app/curriculum/loader'
import type { Curriculum } from '@/lib/curriculum/edition/curriculum'
import { readOpenGuides } from '@/lib/curriculum/store/guide-opening'
import { listFamilies } from '@/lib/curriculum/tree/family-graph'

export interface OpenProgramme {
  readonly programme: string
  readonly name: string
  readonly listed: boolean
  readonly curriculum: Curriculum
  readonly hrefOf: HrefOf
}

/** A programme whose guides are open, for anybody; any other is not found. Nobody is asked who reads. */
export const loadOpenProgramme = cache(async (programme: string): Promise<OpenProgramme> => {
  const open = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/.test(programme) ? await readOpenGuides(programme) : null
  if (!open) notFound()
  // Levels and board moves have no page here.
  const hrefOf: HrefOf = (key) => (key.includes('@') ? `/guide/${programme}/${encodeURIComponent(key)}` : null)
  return { ...open, programme, hrefOf }
})

/** What search engines are asked, by what the lead said. */
export const robotsOf = ({ listed }: OpenProgramme) => ({ index: listed, follow: listed })

export interface GuideList {
  readonly programme: string
  readonly name: string
  readonly title: string
  readonly families: CurriculumPage['families']
}

/** All guides of a programme by family. */
export async function loadGuideList(id: string): Promise<GuideList> {
  const { programme, name, curriculum, hrefOf } = await loadOpenProgramme(id)
  return {
    programme,
    name,
    title: curriculum.document.title,
    families: listFamilies(curriculum).map((family) => viewFamily(curriculum, family, hrefOf)),
  }
}
