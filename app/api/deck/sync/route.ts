import { coachingScopeOf } from '@/lib/access/scope'
import { batchLimit, batchSchema } from '@/lib/assessment/deck/contract'
import { syncDeck } from '@/lib/assessment/store/sync/sync'
import { systemClock } from '@/lib/platform/clock'
import { getWebEnv } from '@/lib/platform/env'
import { answerWith } from '../../answer'
import { findCoach } from '../find-coach'

/** The body as text, or null as soon as it is longer than a batch may be. */
async function readBody(request: Request): Promise<string | null> {
  if (Number(request.headers.get('content-length') ?? 0) > batchLimit.bytes) return null
  const bytes = new Uint8Array(await request.arrayBuffer())
  return bytes.byteLength > batchLimit.bytes ? null : new TextDecoder().decode(bytes)
}

const sameOrigin = (request: Request): boolean => {
  const origin = request.headers.get('origin')
  return (
    origin === null ||
    origin === new URL(getWebEnv().address).origin ||
    // An opaque origin is sent as the word null.
    (URL.canParse(origin) && new URL(origin).host === request.headers.get('host'))
  )
}

function parseJson(text: string): { ok: true; value: unknown } | { ok: false } {
  try {
    return { ok: true, value: JSON.parse(text) }
  } catch {
    return { ok: false }
  }
}

/** Takes in what a deck recorded: an answer for each item, in order. A refused batch left nothing behind. */
export async function POST(request: Request): Promise<Response> {
  if (!sameOrigin(request)) return answerWith(403, 'This endpoint takes batches from the deck of the same site only.')
  const actor = await findCoach(request)
  if (actor instanceof Response) return actor
  const text = await readBody(request)
  if (text === null)
    return answerWith(413, `A batch is at most ${batchLimit.bytes / 1024} kB: send fewer items at once.`)
  const json = parseJson(text)
  if (!json.ok) return answerWith(400, 'The batch is not JSON. Nothing of it was kept.')
  const batch = batchSchema.safeParse(json.value)
  if (!batch.success) {
    const issue = batch.error.issues[0]
    return answerWith(
      400,
      `The batch is malformed at "${issue?.path.join('.') ?? ''}": ${issue?.message}. Nothing of it was kept.`,
    )
  }
  const answers = await syncDeck(coachingScopeOf(actor, systemClock()), batch.data.sentAt, batch.data.items)
  return Response.json(answers)
}
