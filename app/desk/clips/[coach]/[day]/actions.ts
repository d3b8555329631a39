'use server'

import { redirect } from 'next/navigation'
import { z } from 'zod'
import { type FormState, parseForm, refuse } from '@/lib/access/action'
import { requireActor } from '@/lib/access/session'
import { readClockError } from '@/lib/assessment/clips/camera-clock'
import { readClipLines } from '@/lib/assessment/clips/clip-lines'
import { type ChosenClip, linksOf, type Proposal, propose, type SaidClock } from '@/lib/assessment/clips/propose'
import { sayCameraClock, sayChoices, sayMatch, sayUnused } from '@/lib/assessment/clips/say-proposal'
import { linkFilmed } from '@/lib/assessment/store/link-filmed'
import { type OpenSession, readSession } from './loader'

/** What is proposed, as the form shows it: a line an attempt, with the clips that it may be. */
export interface ProposalRow {
  readonly attempt: string
  readonly time: string
  readonly who: string
  readonly name: string
  readonly clip: number
  readonly how: string
  /** Line of the proposed clip; empty where none is. */
  readonly pick: string
  readonly choices: readonly { readonly value: string; readonly label: string }[]
}

export interface MatchState extends FormState {
  readonly proposal?: {
    /** How the camera’s clock was taken; null where no clip has a time. */
    readonly clock: string | null
    readonly rows: readonly ProposalRow[]
    readonly unused: string | null
    /** What is proposed by time hangs on it, and nobody said how it was. */
    readonly clockUnknown: boolean
    /** The list that it was made from. */
    readonly lines: string
  }
}

const matching = z
  .object({
    coach: z.uuid(),
    day: z.iso.date(),
    lines: z.string().max(200_000, { error: 'That is more than a list of clips: paste it in parts.' }),
    clock: z.enum(['find', 'right', 'behind', 'ahead']),
    off: z.string(),
    knownAttempt: z.union([z.literal(''), z.uuid()]),
    knownLine: z.string(),
    do: z.enum(['propose', 'link']).default('propose'),
    proposed: z.string().default(''),
  })
  .catchall(z.string())

type Input = z.infer<typeof matching>

/** What was said of the clock, or what is wrong with it at its field. */
function readClock({
  clock,
  off,
  knownAttempt,
  knownLine,
}: Input): SaidClock | { readonly fields: Record<string, string> } {
  if (clock === 'right') return { behind: 0, known: null }
  if (clock !== 'find') {
    const by = readClockError(off)
    if (by === null)
      return { fields: { off: 'Write how far it is off in minutes, or minutes and seconds: 3, or 3:20.' } }
    return { behind: clock === 'behind' ? by : -by, known: null }
  }
  if (knownAttempt === '' && knownLine.trim() === '') return { behind: null, known: null }
  const line = /^\d{1,3}$/.test(knownLine.trim()) ? Number(knownLine) : 0
  if (knownAttempt === '') return { fields: { knownAttempt: 'Choose the dive that this line shows.' } }
  if (line === 0) return { fields: { knownLine: 'Write the number of the line that shows this dive, counted from 1.' } }
  return { behind: null, known: { attempt: knownAttempt, line } }
}

function toRows(session: OpenSession, proposal: Proposal): ProposalRow[] {
  return proposal.matches.flatMap((match) => {
    const row = session.rows.find(({ attempt }) => attempt === match.attempt)
    if (!row) return []
    const { attempt, time, who, name, clip } = row
    const choices = sayChoices(proposal, match, row)
    const pick = 'line' in match ? String(match.line) : ''
    return [{ attempt, time, who, name, clip, choices, how: sayMatch(match), pick }]
  })
}

const picksIn = (input: Input): ChosenClip[] =>
  Object.entries(input).flatMap(([name, value]) =>
    name.startsWith('pick:') && typeof value === 'string' && /^\d+$/.test(value)
      ? [{ attempt: name.slice('pick:'.length), line: Number(value) }]
      : [],
  )

interface Asked {
  readonly session: OpenSession
  readonly found: Proposal
  readonly input: Input
  readonly form: FormData
}

/** The proposal with what was typed; `chosen`: what was chosen by hand stays chosen. */
function stateOf({ session, found, input, form }: Asked, message: string | null, chosen: boolean): MatchState {
  const used = new Set(found.matches.flatMap((match) => ('line' in match ? [match.line] : [])))
  const left = found.clips.map(({ line }) => line).filter((line) => !used.has(line))
  const shown = {
    clock: found.clips.some(({ start }) => start !== null) ? sayCameraClock(found.clock) : null,
    rows: toRows(session, found),
    unused: sayUnused(left),
  }
  const clockUnknown = found.matches.some((match) => match.by === 'unclear' && match.why === 'clock unknown')
  const proposal: MatchState['proposal'] = { ...shown, clockUnknown, lines: input.lines }
  // What was chosen by hand goes with the proposal that it was chosen from.
  if (chosen) return { ...refuse(form, message ?? ''), proposal }
  const values = Object.fromEntries(Object.entries(input).filter(([name]) => !name.startsWith('pick:')))
  return { values: values as Record<string, string>, ...(message ? { message } : {}), proposal }
}

/** Proposes clips for a session from a pasted list, and links those that the coach then confirms. */
export async function matchAction(_previous: MatchState, form: FormData): Promise<MatchState> {
  const actor = await requireActor()
  const parsed = parseForm(matching, form)
  if (!parsed.ok) return parsed.state
  const { input } = parsed
  const session = await readSession(actor, input.coach, input.day)
  if (!session) return refuse(form, 'Nothing of this session waits for a clip any more.')
  const read = readClipLines(input.lines)
  if (!read.ok)
    return refuse(form, 'Nothing was linked; your list is kept.', {
      lines: read.problems.map(({ message }) => message).join('\n'),
    })
  const clock = readClock(input)
  if ('fields' in clock) return refuse(form, 'Nothing was linked; your list is kept.', clock.fields)
  const found = propose(session.rows, read.clips, clock, session.instantOf)
  const asked = { session, found, input, form }
  if (input.do === 'propose') return stateOf(asked, null, false)
  if (input.proposed !== input.lines)
    return stateOf(asked, 'The list was changed: look at the new proposal, then link it.', false)
  const links = linksOf(found, session.rows, picksIn(input))
  if (!links.ok) return stateOf(asked, links.message, true)
  const outcome = await linkFilmed(session.scope, links.links)
  if (!outcome.ok) return stateOf(asked, outcome.refusal.message, true)
  redirect(`/desk/clips?done=linked&count=${links.links.length}`)
}
