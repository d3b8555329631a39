import { notFound } from 'next/navigation'
import { loadCounted, moveLabel, rowLabel } from '@/app/region/loader'
import { canReview } from '@/lib/access/can'
import { loadActor } from '@/lib/access/session'
import { sayWaitsFor } from '@/lib/assessment/readiness/say-waits-for'
import { formatDay } from '@/lib/assessment/time'
import { writeCsv } from '@/lib/reports/csv'
import { exportable, exportLines } from '@/lib/reports/export'
import { groupings } from '@/lib/reports/tables'
import { answerWith } from '../../answer'

// Spreadsheets take a file for UTF-8 when it begins with this mark.
const byteOrderMark = '\uFEFF'

/** A table of the region as comma-separated values (RFC 4180), each line with its date; small figures are withheld. */
export async function GET(request: Request): Promise<Response> {
  const actor = await loadActor()
  if (!actor) return answerWith(401, 'Sign in to take figures along.')
  if (!canReview(actor)) notFound()
  const asked = new URL(request.url).searchParams
  const of = exportable.find((one) => one === asked.get('of'))
  const by = groupings.find((one) => one === (asked.get('by') ?? 'step'))
  if (!of || !by) notFound()
  const counted = await loadCounted()
  const { curriculum, words, divers, clubs, own } = counted
  const [heads = [], ...lines] = exportLines(
    {
      curriculum,
      divers,
      own,
      clubs: clubs.map(({ value }) => value),
      rowName: (row) => rowLabel(row, counted) ?? '',
      moveName: (move) => moveLabel(move, curriculum),
      waitName: ({ what }) => sayWaitsFor(what, words),
    },
    of,
    by,
  )
  const day = formatDay(words.today)
  const csv = writeCsv([['as of', ...heads], ...lines.map((line) => [day, ...line])])
  return new Response(byteOrderMark + csv, {
    headers: {
      'content-type': 'text/csv; charset=utf-8; header=present',
      'content-disposition': `attachment; filename="region-${of}-by-${by}-${day}.csv"`,
      'cache-control': 'no-store',
    },
  })
}
