import { notFound } from 'next/navigation'
import { canCoach, canDecide, canReview } from '@/lib/access/can'
import { scopeOf } from '@/lib/access/scope'
import { requireActor } from '@/lib/access/session'
import { evaluationOf } from '@/lib/assessment/readiness/evaluation'
import { dayName } from '@/lib/assessment/readiness/wording'
import { readDiver } from '@/lib/assessment/store/reads'
import { findRecognition } from '@/lib/assessment/store/recognise'
import { asOfInstant, dayIn } from '@/lib/assessment/time'
import { systemClock } from '@/lib/platform/clock'
import { sayRecognised } from '../loader'

export interface RecognitionPage {
  readonly id: string
  readonly diver: { readonly id: string; readonly name: string }
  readonly what: string
  /** "recognised", "lapsed", "taken back": how it stands today. */
  readonly state: string
  readonly lines: readonly { readonly when: string; readonly text: string; readonly reason: string }[]
  readonly revocable: boolean
}

/** One recognition: of what, by whom, on what it rests, how it stands. Not found outside the actor's clubs. */
export async function loadRecognition(id: string): Promise<RecognitionPage> {
  const actor = await requireActor()
  if (!canCoach(actor) && !canReview(actor)) notFound()
  const scope = scopeOf(actor, systemClock())
  const row = /^[0-9a-f-]{36}$/.test(id) ? await findRecognition(scope, id) : null
  const desk = row && (await readDiver(scope, row.diver))
  const fact = desk?.file.record.recognitions.find((one) => one.id === id)
  if (!desk || !fact) notFound()
  const { file, curriculum, people } = desk
  const date = asOfInstant(scope.at, file.zone)
  const nameOf = (account: string) => people.get(account)?.name ?? 'a head coach'
  const when = (at: number) => dayName(dayIn(at, file.zone), { today: date.day })
  const { what } = fact
  const signed =
    what.kind === 'holding'
      ? evaluationOf(curriculum, file.record, date)
          .holdings.of(what.pair)
          .all.find((one) => one.id === id)
      : undefined
  const standing =
    signed?.state === 'current' ? (signed.shown ? 'shown since' : 'not shown yet') : (signed?.state ?? '')
  return {
    id,
    diver: { id: file.id, name: `${file.givenName} ${file.familyName}` },
    what: sayRecognised(what, { curriculum }),
    state: row.revoked ? 'taken back' : standing || 'recognised',
    lines: [
      { when: when(row.at), text: `Recognised by ${nameOf(row.by)}.`, reason: row.reason ?? 'The words were erased.' },
      ...(row.revoked
        ? [
            {
              when: when(row.revoked.at),
              text: `Taken back by ${nameOf(row.revoked.by)}.`,
              reason: row.revoked.reason ?? 'The words were erased.',
            },
          ]
        : signed
          ? [{ when: when(scope.at), text: `Valid to ${dayName(signed.validUntil, { today: date.day })}.`, reason: '' }]
          : []),
    ],
    revocable: row.revoked === null && canDecide(actor, file.club),
  }
}
