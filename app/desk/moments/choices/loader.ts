import type { Choice, ChoiceGroup } from '@/app/desk/moments/_components/choices'
import type { Scope } from '@/lib/access/scope'
import { bestOf, standOut } from '@/lib/assessment/comparable'
import { criterionName, dayName, levelName } from '@/lib/assessment/readiness/wording'
import { type ComparableMoment, listComparable } from '@/lib/assessment/store/comparable'
import { type Exemplar, readExemplars } from '@/lib/assessment/store/exemplars'
import { dayIn } from '@/lib/assessment/time'
import type { Curriculum } from '@/lib/curriculum/edition/curriculum'
import { placeFacts } from '@/lib/curriculum/place'

/** The page that holds two moments against each other; with one it asks for the second. */
export const compareHref = (...moments: readonly string[]): string =>
  `/desk/moments/compare?${moments.map((id) => `moment=${id}`).join('&')}`

const othersShown = 5

/** "“Pike closed, legs straight” at Reach", or the fault that it shows. */
const sayShows = ({ shows }: Exemplar, curriculum: Curriculum): string =>
  shows.kind === 'fault'
    ? `the fault “${curriculum.faults.get(shows.fault)?.seen ?? shows.fault}”`
    : `${criterionName(shows.criterion, { curriculum })} at ${levelName(shows.level, { curriculum })}`

/**
 * What a moment can be compared with, or nothing when there is no other of its skill: the diver's own at it, those that
 * stand out first; what a head coach of the coach's clubs named as an exemplar; and of each other diver in scope the best.
 */
export async function loadChoices(
  scope: Scope,
  moment: string,
  skill: string,
  curriculum: Curriculum,
): Promise<readonly ChoiceGroup[]> {
  const all = await listComparable(scope, skill)
  const chosen = all.find(({ copies }) => copies.includes(moment))
  if (!chosen) return []
  const toChoice = (other: ComparableMoment, by: Choice['by']): Choice => {
    const today = dayIn(scope.at, other.diver.zone)
    const pair = other.at < chosen.at ? [other.id, moment] : [moment, other.id]
    return {
      id: other.id,
      day: dayName(dayIn(other.at, other.diver.zone), { today }),
      who: `${other.diver.givenName} ${other.diver.familyName}`,
      where: placeFacts[other.place].label,
      by,
      href: compareHref(...pair),
    }
  }
  const own = all.filter(({ id, diver }) => diver.id === chosen.diver.id && id !== chosen.id)
  const outstanding = standOut(own)
  const named = new Set(outstanding.map((one) => one.moment.id))
  const others = [...new Set(all.map(({ diver }) => diver.id))].filter((id) => id !== chosen.diver.id)
  const best = others.flatMap((id) => {
    const theirs = all.filter(({ diver }) => diver.id === id)
    const here = theirs.filter(({ place }) => place === chosen.place)
    const among = here.length > 0 ? here : theirs
    return bestOf(among) ?? among.at(-1) ?? []
  })
  const exemplars = (await readExemplars(scope)).flatMap((exemplar) => {
    const shown = all.find(({ id, copies }) => id !== chosen.id && copies.some((copy) => copy === exemplar.moment))
    return shown ? toChoice(shown, [sayShows(exemplar, curriculum)]) : []
  })
  return [
    {
      title: `Other dives of ${chosen.diver.givenName}`,
      shown: outstanding.map((one) => toChoice(one.moment, one.by)),
      more: own.filter(({ id }) => !named.has(id)).map((other) => toChoice(other, [])),
    },
    { title: 'Exemplars of this dive', shown: exemplars.slice(0, othersShown), more: exemplars.slice(othersShown) },
    {
      title: 'The same dive by others, the best of each',
      shown: best.slice(0, othersShown).map((other) => toChoice(other, [])),
      more: best.slice(othersShown).map((other) => toChoice(other, [])),
    },
  ].filter(({ shown }) => shown.length > 0)
}
