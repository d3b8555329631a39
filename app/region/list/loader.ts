import { notFound } from 'next/navigation'
import { evaluationOf } from '@/lib/assessment/readiness/evaluation'
import { explain } from '@/lib/assessment/readiness/explain'
import { readTarget } from '@/lib/assessment/readiness/targets'
import type { TargetKey } from '@/lib/assessment/record'
import { readDesk } from '@/lib/assessment/store/reads'
import { asOfDay } from '@/lib/assessment/time'
import { loadRegion, type Region, stepLabel } from '../loader'

export interface ListedDiver {
  readonly href: string
  readonly name: string
  readonly squads: string
  /** What binds, in a sentence. */
  readonly because: string
}

export interface RegionList {
  readonly title: string
  readonly club: string
  readonly rows: readonly ListedDiver[]
  readonly page: number
  readonly pages: number
  readonly total: number
}

const pageSize = 25

/** The target that a step's figures speak of: the level after the one held, or the move itself. */
function targetOf({ desk: { curriculum } }: Region, step: string): TargetKey | null {
  if (step.startsWith('move:')) return step as TargetKey
  const next = curriculum.levels[(step === 'none' ? -1 : curriculum.levelIndex(step)) + 1]
  return next ? `level:${next.key}` : null
}

/** The divers behind one number of the region's tables; an address that names no figure is not found. */
export async function loadList(club: string, step: string, figure: string, page: number): Promise<RegionList> {
  const region = await loadRegion()
  const row = [...region.levels, ...region.moves].find((one) => one.club === club && one.step === step)
  const found = row?.figures.find((one) => one.figure === figure)
  if (!row || !found) notFound()
  const { curriculum, divers } = region.desk
  const target = targetOf(region, step)
  const listed = divers
    .filter((diver) => found.divers.includes(diver.id))
    .sort((a, b) => a.familyName.localeCompare(b.familyName) || a.givenName.localeCompare(b.givenName))
  const shown = listed.slice((page - 1) * pageSize, page * pageSize)
  const { files } = await readDesk(
    region.scope,
    shown.map((diver) => diver.id),
  )
  const rows = shown.flatMap((diver): ListedDiver[] => {
    const file = files.find((candidate) => candidate.id === diver.id)
    if (!file) return []
    const evaluation = evaluationOf(curriculum, file.record, asOfDay(region.words.today, file.zone))
    const finding = target ? readTarget(evaluation, target).finding : null
    return [
      {
        href: `/desk/divers/${file.id}`,
        name: `${file.givenName} ${file.familyName}`,
        squads: file.squads.join(', '),
        because: finding && finding.status !== 'met' ? firstSentence(explain(finding, region.words)) : '',
      },
    ]
  })
  return {
    title: `${figure === 'divers' ? 'divers' : figure}: ${stepLabel(step, curriculum)}`,
    club: region.clubName(club),
    rows,
    page,
    pages: Math.max(1, Math.ceil(listed.length / pageSize)),
    total: listed.length,
  }
}

interface Said {
  readonly sentence: string
  readonly children: readonly Said[]
}

/** The first leaf that binds, which is what to talk about. */
const firstSentence = (node: Said): string => (node.children[0] ? firstSentence(node.children[0]) : node.sentence)
