import type { Marker, MarksView } from '@/app/_components/domain/clip/marks/marks-view'
import type { MeasuresView } from '@/app/_components/domain/clip/measure/measures-view'
import { markTable } from '@/lib/assessment/mark/apart'
import { type Mark, markKeysOf } from '@/lib/assessment/mark/mark'
import { oddities } from '@/lib/assessment/mark/odd'
import { type CriterionSuggestion, suggestionsOf } from '@/lib/assessment/mark/suggestions'
import { type RatedBy, sayMeasured, sayOddity } from '@/lib/assessment/mark/wording'
import type { KeptMeasure } from '@/lib/assessment/store/measures'
import type { Curriculum, PairKey } from '@/lib/curriculum/edition/curriculum'

/** A film of a moment with what coaches marked and measured in it. Seconds. */
export interface FilmWork {
  readonly curriculum: Curriculum
  readonly pair: PairKey
  readonly start: number
  readonly end: number | null
  readonly marks: readonly Mark[]
  readonly measures: readonly KeptMeasure[]
  readonly board: number | null
  readonly people: ReadonlyMap<string, { readonly name: string; readonly initials: string }>
}

const markerOf = ({ people }: FilmWork, id: string): Marker => ({
  id,
  name: people.get(id)?.name ?? 'A coach',
  initials: people.get(id)?.initials ?? '?',
})

/** What a kept measure suggests, by the marks of the coach who took it. */
export function listSuggested({ curriculum, pair, marks }: FilmWork, measure: KeptMeasure): CriterionSuggestion[] {
  const taught = curriculum.pairs.get(pair)
  if (!taught) return []
  const { coach, taken, results } = measure
  const numbers =
    taken.kind === 'flight'
      ? { frameMs: null, down: false, results }
      : { frameMs: taken.frames[0]?.atMs ?? null, down: taken.down, results }
  return suggestionsOf(
    numbers,
    marks.filter((mark) => mark.coach === coach),
    taught,
  )
}

/** The measures of a moment; whose they are decides who may take them back. `ratedOf` is what may be shown beside them. */
export const viewMeasures = (
  moment: string,
  work: FilmWork,
  me: string,
  ratedOf: (criterion: string) => RatedBy | null,
): MeasuresView => ({
  moment,
  board: work.board,
  saved: work.measures.map((measure) => ({
    id: measure.id,
    coach: markerOf(work, measure.coach),
    own: measure.coach === me,
    taken: measure.taken,
    results: measure.results,
    cautions: measure.cautions,
    suggests: listSuggested(work, measure).map((found) => sayMeasured(found, ratedOf(found.criterion.key))),
  })),
})

/** The marks of a moment as one of its coaches sees them: her own, and everybody's beside each other, hers first. */
export function viewMarks(moment: string, work: FilmWork, me: string): MarksView {
  const { curriculum, pair, start, end, marks } = work
  const set = curriculum.pairs.get(pair)?.skill.phaseSet
  const keys = set ? markKeysOf(set) : []
  const own = marks.filter(({ coach }) => coach === me)
  const coaches = [...new Set(marks.map(({ coach }) => coach))].sort((a, b) => Number(b === me) - Number(a === me))
  const range = { startMs: start * 1000, endMs: end === null ? null : end * 1000 }
  return {
    moment,
    keys,
    own,
    odd: oddities(own, keys, range).map(sayOddity),
    coaches: coaches.map((id) => markerOf(work, id)),
    lines: markTable(marks, keys, coaches),
  }
}
