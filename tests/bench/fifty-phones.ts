import { v7 } from 'uuid'
import { envelope } from '../../app/deck/queue/batch'
import type { AttemptItem, DeckItem, ItemAnswer } from '../../lib/assessment/deck/contract'
import type { FullHouse } from './full-house'

const rounds = 4

/** A call of three attempts at 101C, as one phone sends it: seven items. */
function batchOf(diver: string, edition: string): DeckItem[] {
  const [now, device] = [Date.now(), '0f5a1c52-6d0a-4a53-9f6e-5f0b1b1f4a11']
  const at = { diver, skill: '101C', place: '1m', atLevel: 'soundings', device } as const
  const call = v7()
  const attempts = [1, 2, 3].map(
    (number): AttemptItem => ({
      kind: 'attempt',
      id: v7(),
      ...at,
      call: { id: call, number },
      attemptedAt: now + number,
      setting: 'training',
      cued: false,
    }),
  )
  return [
    { kind: 'call', id: call, ...at, count: 3, calledAt: now },
    ...attempts.flatMap((attempt): DeckItem[] => [
      attempt,
      {
        ...{ kind: 'observation', id: v7(), attempt: attempt.id, edition, observedOn: 'deck', observedAt: now + 10 },
        ...{ ratings: {}, restAsExpected: true, faults: [], note: null, moments: [], supersedes: null },
      },
    ]),
  ]
}

export interface SyncFigures {
  readonly requests: number
  readonly items: number
  readonly p50: number
  readonly p95: number
  readonly slowest: number
  readonly seconds: number
}

/** The value below which that share of the sorted numbers lies, by nearest rank. */
const at = (sorted: readonly number[], share: number): number => sorted[Math.ceil(share * sorted.length) - 1] ?? 0

/** All phones send at once, again when all have their answer; milliseconds from request to answer. Throws when anything is refused. */
export async function fiftyPhones(url: string, house: FullHouse, edition: string): Promise<SyncFigures> {
  const times: number[] = []
  let items = 0
  const began = performance.now()
  for (let round = 0; round < rounds; round++) {
    await Promise.all(
      house.coaches.map(async ({ id, token }, index) => {
        const batch = batchOf(house.divers[(index + round) % house.divers.length] ?? '', edition)
        const sent = performance.now()
        const response = await fetch(`${url}/api/deck/sync`, {
          method: 'POST',
          headers: { 'content-type': 'application/json', cookie: `plumbline.session=${token}`, 'x-deck-coach': id },
          body: JSON.stringify(envelope(batch, Date.now())),
        })
        const answers = (await response.json()) as readonly ItemAnswer[]
        times.push(performance.now() - sent)
        if (!response.ok || answers.some(({ result }) => result !== 'accepted'))
          throw new Error(`a batch was not taken: ${response.status} ${JSON.stringify(answers).slice(0, 300)}`)
        items += batch.length
      }),
    )
  }
  const sorted = times.sort((a, b) => a - b)
  const seconds = (performance.now() - began) / 1000
  return {
    requests: sorted.length,
    items,
    p50: at(sorted, 0.5),
    p95: at(sorted, 0.95),
    slowest: sorted.at(-1) ?? 0,
    seconds,
  }
}
