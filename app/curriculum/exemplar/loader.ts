import type { ExemplarView } from '@/app/_components/domain/clip/exemplar-list'
import { toClip } from '@/app/desk/loader'
import { levelName, pairName, placePhrase } from '@/lib/assessment/readiness/wording'
import type { Exemplar } from '@/lib/assessment/store/exemplars'
import { type Curriculum, type PairKey, splitPairKey } from '@/lib/curriculum/edition/curriculum'

const shown = 4

/** A moment as an example in words and as the player takes it: what was dived, never by whom. */
function viewExemplar(
  { id, moment, pair: key, shows, link, start, end }: Exemplar,
  curriculum: Curriculum,
): ExemplarView {
  const pair = curriculum.pairs.get(key)
  const what = pair?.skill.dive
    ? `${pair.skill.dive} ${placePhrase[pair.holding.place]}`
    : pairName(key, { curriculum })
  const label = shows.kind === 'fault' ? what : `${what}, as ${levelName(shows.level, { curriculum })} asks it`
  return {
    id,
    label,
    href: moment ? `/desk/moments/${moment}` : null,
    clip: toClip(link, { start, end }, label),
  }
}

const skillOf = (key: PairKey): string => splitPairKey(key).skill
const distance = (one: Exemplar, pair: PairKey): number =>
  one.pair === pair ? 0 : skillOf(one.pair) === skillOf(pair) ? 1 : 2

/** Those of some exemplars that are nearest to a pair: of the pair itself, then of the skill elsewhere, then of others. */
export const nearest = (exemplars: readonly Exemplar[], pair: PairKey, curriculum: Curriculum): ExemplarView[] =>
  [...exemplars]
    .sort((a, b) => distance(a, pair) - distance(b, pair))
    .slice(0, shown)
    .map((one) => viewExemplar(one, curriculum))

/** The exemplars of a fault. */
export const ofFault = (exemplars: readonly Exemplar[], fault: string): Exemplar[] =>
  exemplars.filter(({ shows }) => shows.kind === 'fault' && shows.fault === fault)

/** The exemplars of a criterion at levels that fit, by index. */
export const ofCriterion = (
  exemplars: readonly Exemplar[],
  criterion: string,
  { levelIndex }: Pick<Curriculum, 'levelIndex'>,
  fits: (level: number) => boolean,
): Exemplar[] =>
  exemplars.filter(({ shows }) => {
    if (shows.kind !== 'criterion' || shows.criterion !== criterion) return false
    const level = levelIndex(shows.level)
    return level >= 0 && fits(level)
  })
