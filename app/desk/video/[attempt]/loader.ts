import type { ClipMoment } from '@/app/_components/domain/clip/clip-moment'
import type { MarksView } from '@/app/_components/domain/clip/marks/marks-view'
import type { MeasuresView } from '@/app/_components/domain/clip/measure/measures-view'
import { toClip } from '@/app/desk/loader'
import { type FilmWork, listSuggested, viewMarks, viewMeasures } from '@/app/desk/moments/loader'
import type { Scope } from '@/lib/access/scope'
import { saySuggestion } from '@/lib/assessment/measure/wording-asked'
import { splitMomentLink } from '@/lib/assessment/moment'
import { pairName } from '@/lib/assessment/readiness/wording'
import { boardOf } from '@/lib/assessment/store/measures'
import { type OwnWork, readOwnWork } from '@/lib/assessment/store/own-work'
import type { Look } from '@/lib/assessment/store/second-look'
import type { Curriculum } from '@/lib/curriculum/edition/curriculum'

/** A film to look at; with what the coach marked and measured in it herself, where it is her club's to work on. */
export interface LookFilm {
  readonly clip: ClipMoment
  readonly work: { readonly marks: MarksView; readonly measures: MeasuresView } | null
}

type Work = readonly [OwnWork, FilmWork]

/** The coach's own work on the films of her club's diver; of another club's she has none. */
async function loadWork(scope: Scope, look: Look, curriculum: Curriculum): Promise<readonly Work[]> {
  if (look.how === 'granted') return []
  const people = new Map([[scope.account, { name: 'You', initials: 'you' }]])
  const own = await readOwnWork(scope, look.attempt)
  return own.map((work) => [work, { ...work, curriculum, pair: look.pair.key, board: boardOf(look.pair), people }])
}

/** What the coach's own measures suggest, by criterion. */
function suggestedBy(works: readonly Work[]): ReadonlyMap<string, readonly string[]> {
  const found = works.flatMap(([, work]) => work.measures.flatMap((measure) => listSuggested(work, measure)))
  const said = new Map<string, string[]>()
  for (const one of found)
    if ('suggestion' in one)
      said.set(one.criterion.key, [...(said.get(one.criterion.key) ?? []), saySuggestion(one.suggestion)])
  return said
}

/** The films of an attempt to look at blind: with the coach's own marks and measures, and nobody else's. */
export async function loadFilms(
  scope: Scope,
  look: Look,
  curriculum: Curriculum,
): Promise<{ films: LookFilm[]; suggested: ReadonlyMap<string, readonly string[]> }> {
  const works = await loadWork(scope, look, curriculum)
  const films = look.moments.map((href): LookFilm => {
    const { link, range } = splitMomentLink(href)
    const title = `${look.givenName}, ${pairName(look.pair.key, { curriculum })}`
    const clip = toClip(link, range ?? { start: 0, end: null }, title)
    const found = works.find(([own]) => own.href === href)
    if (!found) return { clip, work: null }
    const [{ moment }, work] = found
    const measures = viewMeasures(moment, work, scope.account, () => null)
    return { clip, work: { marks: viewMarks(moment, work, scope.account), measures } }
  })
  return { films, suggested: suggestedBy(works) }
}
