import type { Act } from '@/app/desk/_components/panels'
import { coachingScopeOf } from '@/lib/access/scope'
import { requireHeadCoach } from '@/lib/access/session'
import { listCautions } from '@/lib/assessment/against'
import { type ArcSubject, arcSubject } from '@/lib/assessment/arc-subject'
import { leadingPair } from '@/lib/assessment/evidence'
import { type Entry, type ListName, listNames } from '@/lib/assessment/lists'
import { isAnswered, questionsUnder, standingQuestions } from '@/lib/assessment/question'
import type { Evaluation } from '@/lib/assessment/readiness/evaluation'
import { sayBlock } from '@/lib/assessment/readiness/say-block'
import { sayCaution } from '@/lib/assessment/readiness/say-caution'
import { listWords, sayEntry } from '@/lib/assessment/readiness/say-entry'
import { sayStanding } from '@/lib/assessment/readiness/say-question'
import { readTarget } from '@/lib/assessment/readiness/targets'
import { dayName, levelName, pairName, stepName } from '@/lib/assessment/readiness/wording'
import type { TargetKey } from '@/lib/assessment/record'
import { type DiverReview, type Review, readReview } from '@/lib/assessment/store/review'
import { dayIn, type EpochDay } from '@/lib/assessment/time'
import type { PairKey } from '@/lib/curriculum/edition/curriculum'
import { systemClock } from '@/lib/platform/clock'
import { actsOn } from './[diver]/[target]/loader'

/** A line of a list: whom it is about, why it stands there, and what can be done about it. */
export interface ListRow {
  readonly id: string
  readonly href: string
  readonly diver: string
  readonly squads: string
  readonly margin: string
  /** What it is about, in two or three words: a step, a skill at a place. */
  readonly about: string
  readonly sentence: string
  /** What else speaks against it. */
  readonly notes: readonly string[]
  readonly acts: readonly Act[]
  readonly arc: { readonly title: string; readonly subject: ArcSubject } | null
}

export interface ReviewList {
  readonly name: ListName
  readonly title: string
  readonly aside: string
  readonly count: number
  readonly rows: readonly ListRow[]
}

/** Of a long list; what is dangerous and what is ready is shown whole. */
const rowsShown = 6
const shownWhole: readonly ListName[] = ['incidents', 'ready']

const targetHref = (diver: string, target: TargetKey) => `/desk/queue/${diver}/${encodeURIComponent(target)}`
const pairHref = (diver: string, pair: PairKey) => `/desk/divers/${diver}/${encodeURIComponent(pair)}`

/** Who reads the lists, and what was asked beside the records. */
type Reading = Pick<Review, 'questions' | 'people'> & { readonly account: string }
// The lists lead to no moment: the step's own page does.
const nowhere: ReadonlySet<string> = new Set()

/** The parts of a line about a level or board move: it alone reads its target. */
function targetParts({ here, words }: DiverReview, evaluation: Evaluation, target: TargetKey, reading: Reading) {
  const found = readTarget(evaluation, target)
  const { account: reader, people } = reading
  const questions = reading.questions(here.id)
  const dives = evaluation.record.attempts
  const standing = standingQuestions(questions, dives)
  const about = { diver: here.id, zone: here.zone, attempts: dives, shown: nowhere }
  const asking = { ...about, questions, people, words, reader }
  const under = questionsUnder(standing, found)
  const answered = under.filter(isAnswered).length
  const said = sayStanding(answered, under.length - answered)
  const { curriculum } = evaluation
  const pair = leadingPair(evaluation, found)
  const attempts = pair ? (evaluation.history(pair.key)?.attempts ?? []).slice(-pair.standard.of) : []
  return {
    href: targetHref(here.id, target),
    about: stepName(target, words),
    acts: actsOn(evaluation, found, { ...asking, standing }),
    notes: [
      ...found.blocks.map((block) => sayBlock(block, words)),
      ...listCautions(evaluation, found).map((caution) => sayCaution(caution, words)),
      ...(said ? [said] : []),
    ],
    arc: pair
      ? {
          title: `${pairName(pair.key, words)}, the last attempts`,
          subject: arcSubject(curriculum, pair, attempts, Math.max(pair.level, 0)),
        }
      : null,
  }
}

/** Where and about what a line stands, and what can be done; `subject` tells it from the diver's others on its list. */
type Parts = Omit<ListRow, 'id' | 'diver' | 'squads' | 'sentence' | 'margin'> & { readonly subject: string }

function partsOf({ diver, entry }: Line, evaluation: Evaluation | undefined, reading: Reading): Parts | null {
  const { words, here } = diver
  const atPair = (pair: PairKey, subject: string, acts: readonly Act[]): Parts => {
    return { subject, href: pairHref(here.id, pair), about: pairName(pair, words), acts, notes: [], arc: null }
  }
  switch (entry.list) {
    case 'incidents':
      return {
        ...atPair(entry.incident.pair, entry.incident.id, []),
        href: `/desk/divers/${here.id}/safety?clear=${entry.incident.id}`,
      }
    case 'in doubt': {
      const { kind, id } = entry.signed
      return atPair(entry.pair, id, [{ act: 'revoke', kind, subject: id }])
    }
    case 'raised':
      return atPair(entry.attempt.pair, entry.view.id, [{ act: 'accept', observation: entry.view.id }])
    case 'flagged': {
      const { id, pair } = entry.attempt
      return atPair(pair, id, entry.why === 'closed' ? [{ act: 'release', attempt: id }] : [])
    }
    case 'not rated':
      return atPair(entry.call.pair, entry.call.id, [{ act: 'close', call: entry.call.id }])
    case 'lapsing': {
      const { pair, renewal, signed } = entry
      const renew = renewal && { act: 'sign' as const, diver: here.id, pair, level: renewal.level }
      return atPair(pair, signed.id, renew ? [{ ...renew, levelTitle: levelName(renew.level, words) }] : [])
    }
    case 'ready':
    case 'to review':
      return evaluation ? { subject: entry.target, ...targetParts(diver, evaluation, entry.target, reading) } : null
  }
}

/** The day by which a line is put in order and that stands in its margin; what is to review goes by the diver's name. */
function dayOf({ here }: DiverReview, entry: Entry): EpochDay | null {
  switch (entry.list) {
    case 'incidents':
      return dayIn(entry.incident.happenedAt, here.zone)
    case 'in doubt':
      return entry.signed.day
    case 'raised':
    case 'flagged':
      return entry.attempt.day
    case 'not rated':
      return entry.call.day
    case 'lapsing':
      return entry.signed.validUntil
    case 'ready':
      return entry.since
    case 'to review':
      return null
  }
}

interface Line {
  readonly diver: DiverReview
  readonly entry: Entry
  readonly name: string
  readonly day: EpochDay | null
}

/** Of doubts those that end in themselves stand before those that rest on another. */
const reach = ({ entry }: Line): number => (entry.list === 'in doubt' ? entry.chain.length : 0)

const oldestFirst = (a: Line, b: Line): number =>
  reach(a) - reach(b) || (a.day ?? 0) - (b.day ?? 0) || a.name.localeCompare(b.name, 'en')

function toRow(line: Line, review: Review, account: string): ListRow[] {
  const { diver, entry, name, day } = line
  const { here, words } = diver
  const parts = partsOf(line, review.evaluations.get(here.id), { ...review, account })
  if (!parts) return []
  const { subject, ...rest } = parts
  return [
    {
      ...rest,
      id: `${entry.list}-${here.id}-${subject}`.replace(/[^\w-]/g, '-'),
      diver: name,
      squads: here.squads.join(', '),
      margin: day === null ? '' : `${entry.list === 'ready' ? 'since ' : ''}${dayName(day, words)}`,
      sentence: sayEntry(entry, words),
    },
  ]
}

const linesOf = ({ divers }: Review): Line[] =>
  divers.flatMap((diver) => {
    const name = `${diver.here.givenName} ${diver.here.familyName}`
    return diver.entries.map((entry) => ({ diver, entry, name, day: dayOf(diver, entry) }))
  })

/** What waits for this head coach, list by list; of long lists the first lines, of the one named in the address all. */
export async function loadLists(named: string | undefined): Promise<{
  readonly lists: readonly ReviewList[]
  readonly only: ListName | null
}> {
  const actor = await requireHeadCoach()
  const headed = actor.clubs.filter((post) => post.role === 'head').map((post) => post.club)
  const only = listNames.find((name) => name === named) ?? null
  const review = await readReview(coachingScopeOf(actor, systemClock()), headed)
  const lines = linesOf(review)
  const toList = (name: ListName): ReviewList => {
    const own = lines.filter(({ entry }) => entry.list === name).sort(oldestFirst)
    const shown = name === only || shownWhole.includes(name) ? own : own.slice(0, rowsShown)
    const rows = shown.flatMap((line) => toRow(line, review, actor.account))
    return { name, ...listWords[name], count: own.length, rows }
  }
  return { lists: listNames.map(toList), only }
}
