import { v7 as uuidv7 } from 'uuid'
import type { Outcome } from '../../lib/assessment/outcome'
import type { Rating } from '../../lib/curriculum/model'
import { minute, ratedAttempt, type SmallCoast, sendAs } from './small-club'

/** A rated attempt of the diver who is here, with one moment. */
export interface Filmed {
  readonly attempt: string
  readonly observation: string
  readonly moment: string
}

/** The id of what was kept. Throws Error with the refusal. */
export function idOf(outcome: Outcome): string {
  if (!outcome.ok) throw new Error(outcome.refusal.message)
  return outcome.id
}

/** The assistant rates a called attempt at treading water, from the deck, with a moment on video. */
export async function film(coast: SmallCoast, at: number, rating: Rating = 4): Promise<Filmed> {
  const moment = uuidv7({ msecs: at })
  const dive = {
    diver: coast.divers.here,
    skill: 'tread',
    place: 'poolside',
    at,
    ratings: { 'clear-water': rating },
  } as const
  const items = ratedAttempt(coast, dive).map((item) =>
    item.kind === 'observation'
      ? { ...item, moments: [{ id: moment, link: '/media/clips/101b-sound.webm', start: 0.5, end: 1.5 }] }
      : item,
  )
  const answers = await sendAs(coast, 'assistant', at + 2 * minute, items)
  const refused = answers.find(({ result }) => result !== 'accepted')
  if (refused) throw new Error(refused.message ?? 'not kept')
  const idOfKind = (kind: 'attempt' | 'observation') => items.find((item) => item.kind === kind)?.id ?? ''
  return { attempt: idOfKind('attempt'), observation: idOfKind('observation'), moment }
}

/** The assistant's correction of a filmed attempt, as her deck sends it. */
export const answerOf = (
  coast: SmallCoast,
  { attempt, observation }: Filmed,
  at: number,
  ratings: Record<string, Rating>,
) => ({
  kind: 'observation' as const,
  id: uuidv7({ msecs: at }),
  attempt,
  edition: coast.edition,
  observedOn: 'deck' as const,
  observedAt: at,
  ratings,
  restAsExpected: true,
  faults: [],
  note: null,
  moments: [],
  supersedes: { id: observation, reason: 'Seen again on the film.' },
})
