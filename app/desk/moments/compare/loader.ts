import { notFound } from 'next/navigation'
import type { ComparedFilm } from '@/app/_components/domain/compare/compared-film'
import { toClip } from '@/app/desk/loader'
import type { ChoiceGroup } from '@/app/desk/moments/_components/choices'
import { compareHref, loadChoices } from '@/app/desk/moments/choices/loader'
import type { NumbersGroup } from '@/app/desk/moments/compare/_components/numbers'
import { coachingScopeOf, type Scope } from '@/lib/access/scope'
import { requireCoach } from '@/lib/access/session'
import { notComparable } from '@/lib/assessment/comparable'
import { compareTimes, marksToUse, measuresInPhases } from '@/lib/assessment/mark/compare'
import { type Mark, markKeysOf } from '@/lib/assessment/mark/mark'
import { compareMeasures } from '@/lib/assessment/measure/compare-measures'
import { type Fit, fitsOf } from '@/lib/assessment/measure/fit'
import { inSeconds, sayDifference, sayMeasured } from '@/lib/assessment/measure/say-difference'
import type { OnFrames } from '@/lib/assessment/measure/taken'
import { nameCompared, sayCompared, sayResult } from '@/lib/assessment/measure/wording-compared'
import { nameTaken } from '@/lib/assessment/measure/wording-taken'
import { dayName, pairName } from '@/lib/assessment/readiness/wording'
import { findMoment, type MomentFile } from '@/lib/assessment/store/moments'
import { dayIn } from '@/lib/assessment/time'
import { splitPairKey } from '@/lib/curriculum/edition/curriculum'
import { systemClock } from '@/lib/platform/clock'

/** One moment is there, and another is to be chosen. */
interface ToChoose {
  readonly kind: 'choose'
  readonly sentence: string
  readonly from: { readonly name: string; readonly href: string }
  readonly groups: readonly ChoiceGroup[]
}

/** What was asked for cannot be compared: why, and where to go. */
interface Refused {
  readonly kind: 'refused'
  readonly why: string
  readonly back: { readonly name: string; readonly href: string }
}

/** Two moments of the same dive. */
export interface Compared {
  readonly kind: 'compared'
  readonly sentence: string
  readonly films: Readonly<Record<'first' | 'second', ComparedFilm>>
  readonly fits: readonly Fit[]
  /** The part of the address that names the two. */
  readonly moments: string
  /** The same two the other way round. */
  readonly swapped: string
  /** What to keep in mind when the two are not alike. */
  readonly note: string | null
  readonly numbers: readonly NumbersGroup[]
  /** What would give more numbers. */
  readonly wanting: string | null
}

interface Found extends MomentFile {
  readonly id: string
  readonly skill: string
  readonly place: string
  readonly who: string
  readonly said: string
  readonly href: string
  /** The marks of one of its coaches. */
  readonly used: readonly Mark[]
}

const isId = /^[0-9a-f-]{36}$/

/** A moment in scope; any other, and one without consent to video, is not found. */
async function find(scope: Scope, id: string, me: string): Promise<Found> {
  const found = isId.test(id) ? await findMoment(scope, id) : null
  if (!found) notFound()
  const { diver, day } = found
  return {
    ...found,
    id,
    ...splitPairKey(found.pair),
    who: `${diver.givenName} ${diver.familyName}`,
    said: dayName(day, { today: dayIn(scope.at, diver.zone) }),
    href: `/desk/moments/${id}`,
    used: marksToUse(found.marks, me),
  }
}

const whyNot = {
  'same moment': 'That is the same moment twice. Choose another one to hold it against.',
  'different dives':
    'The two show different dives, and their phases are not the same: nothing in one could be laid on the other. Compare moments of one dive; its height may differ.',
} as const

/** What was placed on frames, oldest first. */
const onFrames = ({ measures }: Found): OnFrames[] =>
  measures.flatMap(({ taken }) => (taken.kind === 'flight' ? [] : [taken]))

/** The frames of measures, as instants that two films can be laid on: of each kind and phase the last. */
function toMeasured(found: Found): ComparedFilm['measured'] {
  const frames = measuresInPhases(found).flatMap(({ taken, phase }) => {
    if (taken.kind === 'flight') return []
    const label = `${nameTaken(taken)}${phase ? `, ${phase}` : ''}`
    return taken.frames.slice(0, 1).map(({ atMs }) => ({
      key: `${taken.kind} ${taken.down} ${phase}`,
      label,
      time: atMs / 1000,
    }))
  })
  return [...new Map(frames.map((one) => [one.key, one])).values()]
}

function toFilm(found: Found): ComparedFilm {
  const { link, start, end, who, said, used } = found
  const title = `${who}, ${pairName(found.pair, found)}, ${said}`
  const frames = used.flatMap(({ frameUs }) => frameUs ?? [])
  return {
    moment: toClip(link, { start, end }, title),
    name: `${who}, ${said}`,
    href: found.href,
    marks: used.map(({ key, atMs }) => ({ key, label: key, time: atMs / 1000 })),
    frame: frames.length > 0 ? Math.min(...frames) / 1_000_000 : null,
    placed: onFrames(found).map(({ kind, frames, points }) => ({
      kind,
      times: frames.map(({ atMs }) => atMs / 1000),
      points,
    })),
    measured: toMeasured(found),
  }
}

/** The times of both, phase by phase. */
function toTimes(first: Found, second: Found): NumbersGroup[] {
  const set = first.curriculum.skills.get(first.skill)?.phaseSet
  const rows = compareTimes(first.used, second.used, set ? markKeysOf(set) : [])
  if (rows.length === 0) return []
  const marker = ({ used, people }: Found) => people.get(used[0]?.coach ?? '')?.name ?? 'a coach'
  const by = marker(first) === marker(second) ? marker(first) : `${marker(first)} and ${marker(second)}`
  return [
    {
      title: 'Times',
      aside: `by the marks of ${by}; each is known to within a frame`,
      rows: rows.map(({ from, to, phase, time }) => ({
        name: phase ?? (from === 'flight' && to === 'entry' ? 'in the air' : `${from} to ${to}`),
        first: sayMeasured(time.first, inSeconds),
        second: sayMeasured(time.second, inSeconds),
        difference: time.told ? `second ${sayDifference(time, inSeconds)}` : sayDifference(time, inSeconds),
        told: time.told,
      })),
    },
  ]
}

/** The measures that both have, and what their intervals tell. */
function toMeasures(first: Found, second: Found): NumbersGroup[] {
  const rows = compareMeasures(measuresInPhases(first), measuresInPhases(second)).map((one) => ({
    name: nameCompared(one),
    first: sayResult(one.first),
    second: sayResult(one.second),
    difference: sayCompared(one),
    told: one.difference.told && !one.opposite,
  }))
  return rows.length === 0
    ? []
    : [{ title: 'Measures', aside: 'with their 95 % intervals; angles by their size', rows }]
}

/** What an address with moments asks for: two to compare, one to choose a second for, or something that cannot be. */
export async function loadComparison(
  asked: string | readonly string[] | undefined,
): Promise<ToChoose | Refused | Compared> {
  const actor = await requireCoach()
  const scope = coachingScopeOf(actor, systemClock())
  const ids = typeof asked === 'string' ? [asked] : (asked ?? [])
  const moments = await Promise.all(ids.slice(0, 2).map((id) => find(scope, id, actor.account)))
  const [first, second] = moments
  if (!first || ids.length > 2)
    return {
      kind: 'refused',
      why: first
        ? `Two moments can be compared, and ${ids.length} were chosen. Go back and tick two.`
        : 'Two moments are compared. Choose them on the page of a diver’s skill, among its attempts, or begin from a moment.',
      back: first
        ? { name: 'All attempts at it', href: `/desk/divers/${first.diver.id}/${encodeURIComponent(first.pair)}` }
        : { name: 'Divers', href: '/desk/divers' },
    }
  const name = pairName(first.pair, first)
  if (!second) {
    const groups = await loadChoices(scope, first.id, first.skill, first.curriculum)
    const from = { name: `${first.who}, ${first.said}`, href: first.href }
    return { kind: 'choose', sentence: `${name}: which moment beside it?`, from, groups }
  }
  const not = notComparable(first, second)
  if (not) return { kind: 'refused', why: whyNot[not.why], back: { name: first.who, href: first.href } }
  const skill = first.curriculum.skills.get(first.skill)?.title ?? first.skill
  const numbers = [...toTimes(first, second), ...toMeasures(first, second)]
  const alone = first.diver.id === second.diver.id
  return {
    kind: 'compared',
    sentence: alone
      ? `${name}: ${first.diver.givenName} on ${first.said} and on ${second.said}.`
      : `${skill}: ${first.diver.givenName} beside ${second.diver.givenName}.`,
    films: { first: toFilm(first), second: toFilm(second) },
    fits: fitsOf(onFrames(first), onFrames(second)),
    moments: `moment=${first.id}&moment=${second.id}`,
    swapped: compareHref(second.id, first.id),
    note:
      first.place === second.place
        ? null
        : 'The two are from different places: how long a dive lasts and how fast it enters follow from the height alone.',
    numbers,
    wanting: numbers.length > 0 ? null : 'Mark two phases or more in both moments, and the times of both stand here.',
  }
}
