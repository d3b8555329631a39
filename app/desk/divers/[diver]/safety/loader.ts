import { notFound } from 'next/navigation'
import { postIn } from '@/lib/access/can'
import { standDownsOn } from '@/lib/assessment/block'
import { type Purpose, purposes, type Reach } from '@/lib/assessment/consent'
import { careSince, sayCare } from '@/lib/assessment/growth'
import { openIncidents, signedUnaware } from '@/lib/assessment/incident'
import { layOffAt } from '@/lib/assessment/lay-off'
import type { Evaluation } from '@/lib/assessment/readiness/evaluation'
import { sentence } from '@/lib/assessment/readiness/grammar'
import { sayBlock } from '@/lib/assessment/readiness/say-block'
import { dayName, pairName, stepName, type Words } from '@/lib/assessment/readiness/wording'
import type { DiverRecord } from '@/lib/assessment/record'
import type { Person } from '@/lib/assessment/store/reads'
import { type IncidentEntry, readSafety, type Safety, type StandDownEntry } from '@/lib/assessment/store/safety'
import { dayIn, type EpochDay, formatDay } from '@/lib/assessment/time'
import { clockTime } from '@/lib/assessment/wall-clock'
import { loadDiverNow } from '../loader'

export interface IncidentView {
  readonly id: string
  readonly when: string
  readonly title: string
  readonly by: string
  readonly note: string | null
  readonly knock: boolean
  /** What was signed or decided before it was known here. */
  readonly unaware: readonly string[]
  readonly cleared: string | null
  readonly clearedWords: readonly string[]
}

export interface StandDownView {
  readonly id: string
  readonly span: string
  readonly title: string
  readonly reason: string | null
  readonly by: string
  readonly standing: 'in force' | 'to come' | 'over'
  readonly endable: boolean
}

export interface ConsentView {
  readonly purpose: Purpose
  readonly title: string
  readonly given: boolean
  /** Of exemplars: who may see them, while it is given. */
  readonly reach: Reach | null
  readonly sentence: string
  readonly history: readonly string[]
}

export interface SafetyPage {
  readonly diver: { readonly id: string; readonly name: string; readonly given: string; readonly href: string }
  readonly head: boolean
  readonly headline: string
  readonly today: string
  readonly time: string
  readonly pairs: readonly { readonly key: string; readonly name: string }[]
  readonly incidents: readonly IncidentView[]
  readonly standDowns: readonly StandDownView[]
  readonly layOffs: readonly string[]
  readonly care: string | null
  readonly growth: readonly { readonly id: string; readonly when: string; readonly text: string }[]
  readonly consents: readonly ConsentView[]
}

interface Saying {
  readonly words: Words
  readonly zone: string
  readonly people: ReadonlyMap<string, Person>
}

const nameOf = ({ people }: Saying, id: string): string => people.get(id)?.name ?? 'a coach'
const dayOf = ({ words, zone }: Saying, at: number): string => dayName(dayIn(at, zone), words)
const quoted = (text: string | null): string[] => (text ? [`“${text}”`] : [])

function toIncident(say: Saying, evaluation: Evaluation, entry: IncidentEntry): IncidentView {
  const { id, pair, kind, release } = entry
  const fact = openIncidents(evaluation.record).find((one) => one.id === id)
  const unaware = fact ? signedUnaware(evaluation, fact) : { signOffs: [], decisions: [] }
  return {
    id,
    when: `${dayOf(say, entry.happenedAt)}, ${clockTime(entry.happenedAt, say.zone)}`,
    title: sentence(`${kind}: ${pairName(pair, say.words)}`),
    by: nameOf(say, entry.by),
    note: entry.note,
    knock: kind === 'knock to the head',
    unaware: [
      ...unaware.signOffs.map((one) => `${pairName(one.pair, say.words)} was signed on ${dayOf(say, one.signedAt)}`),
      ...unaware.decisions.map(
        (one) => `${stepName(one.target, say.words)} was approved on ${dayOf(say, one.decidedAt)}`,
      ),
    ].map(sentence),
    cleared: release && `Cleared on ${dayOf(say, release.at)} by ${nameOf(say, release.by)}.`,
    clearedWords: release ? [...quoted(release.reason), ...quoted(release.statement)] : [],
  }
}

const closes = { water: 'the water', boards: 'the boards', new: 'anything new' } as const

function toStandDown(say: Saying, today: EpochDay, entry: StandDownEntry): StandDownView {
  const { from, until, ended } = entry
  const over = until !== null && until < today
  const until_ = until === null ? 'open' : `to ${dayName(until, say.words)}`
  return {
    id: entry.id,
    span: `${dayName(from, say.words)}, ${until_}`,
    title: `Kept from ${closes[entry.closes]}.`,
    reason: entry.reason,
    by: `Set by ${nameOf(say, entry.by)}${ended ? `; ended by ${nameOf(say, ended.by)} on ${dayOf(say, ended.at)}` : ''}.`,
    standing: over ? 'over' : from > today ? 'to come' : 'in force',
    endable: !over && ended === null,
  }
}

const consentTitles: Record<Purpose, string> = {
  record: 'To keep a record',
  video: 'To link video',
  exemplar: 'To show moments as exemplars',
}
const seenBy: Record<Reach, string> = {
  club: 'for the coaches of the club',
  programme: 'for the coaches of all clubs of the programme, without a name',
  everybody: 'for everybody who reads the guides, without a name',
}
const without: Record<Purpose, string> = {
  record: 'Nothing is recorded yet about a consent: ask for it. Ratings are taken meanwhile.',
  video: 'No consent: no moment is kept, and none is shown.',
  exemplar: 'No consent: no moment is shown as an example, of what is good or of a fault.',
}

function toConsent(say: Saying, consents: Safety['consents'], purpose: Purpose): ConsentView {
  const own = consents.filter((entry) => entry.purpose === purpose)
  const lines = own.map(({ given, reach, at, by, saidBy }) => {
    const who = saidBy ? ` “${saidBy}”` : ''
    const what = reach ? `Given ${seenBy[reach]}` : given ? 'Given' : 'Withdrawn'
    return `${what} on ${dayOf(say, at)}, recorded by ${nameOf(say, by)}.${who}`
  })
  return {
    purpose,
    title: consentTitles[purpose],
    given: own[0]?.given ?? false,
    reach: own[0]?.reach ?? null,
    sentence: lines[0] ?? without[purpose],
    history: lines.slice(1),
  }
}

function headlineOf(record: DiverRecord, standDowns: readonly string[], given: string): string {
  const open = openIncidents(record).length
  if (standDowns[0]) return standDowns[0]
  if (open > 0) return open === 1 ? 'One incident waits to be cleared.' : `${open} incidents wait to be cleared.`
  return `Nothing keeps ${given} from diving.`
}

/** What keeps a diver safe: for the coaches of her club, and nobody else. */
export async function loadSafety(diver: string): Promise<SafetyPage> {
  const { actor, scope, desk, evaluation, words } = await loadDiverNow(diver)
  const { file, people, curriculum } = desk
  const post = postIn(actor, file.club)
  if (!post) notFound()
  const safety = await readSafety(scope, file.id)
  const say: Saying = { words, people, zone: file.zone }
  const today = evaluation.date.day
  const care = careSince(
    safety.growth.map(({ notedOn }) => notedOn),
    today,
  )
  return {
    diver: {
      id: file.id,
      name: `${file.givenName} ${file.familyName}`,
      given: file.givenName,
      href: `/desk/divers/${file.id}`,
    },
    head: post.role === 'head',
    headline: headlineOf(
      file.record,
      standDownsOn(evaluation).map((block) => sayBlock(block, words)),
      file.givenName,
    ),
    today: formatDay(today),
    time: clockTime(scope.at, file.zone),
    pairs: [...curriculum.pairs.values()].map(({ key }) => ({ key, name: pairName(key, words) })),
    incidents: safety.incidents.map((entry) => toIncident(say, evaluation, entry)),
    standDowns: safety.standDowns.map((entry) => toStandDown(say, today, entry)),
    layOffs: curriculum.layOff
      .flatMap(({ place }) => layOffAt(evaluation, place) ?? [])
      .map((block) => sayBlock(block, words)),
    care: care === null ? null : sayCare(care, words),
    growth: safety.growth.map(({ id, notedOn, by, note }) => ({
      id,
      when: dayName(notedOn, words),
      text: [`Noted by ${nameOf(say, by)}.`, ...quoted(note)].join(' '),
    })),
    consents: purposes.map((purpose) => toConsent(say, safety.consents, purpose)),
  }
}
