import fc from 'fast-check'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import type { DeckItem, ItemAnswer } from '@/lib/assessment/deck/contract'
import { aCall, anAttempt, anObservation } from '@/tests/support/deck-items'
import { parentsOf } from './lineage'
import { memoryOutbox } from './outbox'
import { openQueue } from './outbox-queue'
import type { Send, SendResult } from './transport'

/** What can befall one try. */
const mishap = fc.constantFrom('fine', 'request lost', 'answer lost', 'half answered', 'hangs', 'signed out', 'busy')
type Mishap = typeof mishap extends fc.Arbitrary<infer Value> ? Value : never

/** A server that stores each id once and refuses a child whose parent it does not have. */
function storing(mishaps: readonly Mishap[]) {
  const stored: DeckItem[] = []
  let repeats = 0
  let at = 0
  const store = (item: DeckItem): ItemAnswer => {
    if (stored.some(({ id }) => id === item.id)) {
      repeats += 1
      return { id: item.id, result: 'known' }
    }
    if (!parentsOf(item).every((parent) => stored.some(({ id }) => id === parent)))
      return { id: item.id, result: 'refused', code: 'parent refused' }
    stored.push(item)
    return { id: item.id, result: 'accepted' }
  }
  const send: Send = async (items) => {
    const what = mishaps[at++] ?? 'fine'
    const failed: SendResult = { kind: 'unreachable', message: what }
    if (what === 'request lost' || what === 'busy') return failed
    if (what === 'signed out') return { kind: 'signed out', message: what }
    const answers = items.map(store)
    if (what === 'answer lost') return failed
    if (what === 'hangs') return new Promise(() => {})
    return { kind: 'answered', answers: what === 'half answered' ? answers.slice(0, answers.length / 2) : answers }
  }
  return { stored, send, repeats: () => repeats }
}

beforeEach(() => vi.useFakeTimers())
afterEach(() => vi.useRealTimers())

describe('whatever happens on the way', () => {
  it('each item is stored once, parents first, in the order in which it was kept', async () => {
    let repeats = 0
    await fc.assert(
      fc.asyncProperty(
        fc.array(mishap, { maxLength: 30 }),
        fc.array(fc.nat({ max: 90_000 }), { minLength: 1, maxLength: 12 }),
        async (mishaps, pauses) => {
          const server = storing(mishaps)
          const queue = await openQueue(memoryOutbox(), server.send, { random: () => 0.5 })
          const call = aCall({ count: pauses.length })
          const all: DeckItem[] = [call]
          await queue.add([call])
          for (const [index, pause] of pauses.entries()) {
            const attempt = anAttempt({ call: { id: call.id, number: index + 1 } })
            const items = [attempt, anObservation(attempt.id)]
            all.push(...items)
            await queue.add(items)
            await vi.advanceTimersByTimeAsync(pause)
          }
          // Every mishap costs at most a minute's wait and the time to give up; a sign-in wants a person.
          for (let tries = 0; tries < 40 && queue.unsent().unsent.length > 0; tries++) {
            void queue.sendNow()
            await vi.advanceTimersByTimeAsync(80_000)
          }
          repeats += server.repeats()
          expect(queue.unsent()).toMatchObject({ unsent: [], refused: [], sending: 'idle' })
          expect(server.stored.map(({ id }) => id)).toEqual(all.map(({ id }) => id))
        },
      ),
      { seed: 20260307, numRuns: 150 },
    )
    // The mishaps did make the queue send things twice.
    expect(repeats).toBeGreaterThan(100)
  })

  it('the same holds when the page is killed again and again and another takes its outbox over', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(mishap, { maxLength: 20 }),
        fc.array(fc.record({ pause: fc.nat({ max: 30_000 }), killed: fc.boolean() }), { minLength: 1, maxLength: 12 }),
        async (mishaps, dives) => {
          const server = storing(mishaps)
          const outbox = memoryOutbox()
          const all: DeckItem[] = []
          // A killed page neither sends nor hears any more; what it had asked the server for may still arrive there.
          let page = 0
          const open = () => {
            const mine = ++page
            const send: Send = async (items, signal) => {
              const result = await server.send(items, signal)
              return mine === page ? result : new Promise(() => {})
            }
            return openQueue(outbox, send, { random: () => 0.5 })
          }
          let queue = await open()
          for (const { pause, killed } of dives) {
            const attempt = anAttempt()
            const items = [attempt, anObservation(attempt.id)]
            all.push(...items)
            await queue.add(items)
            await vi.advanceTimersByTimeAsync(pause)
            if (!killed) continue
            vi.clearAllTimers()
            queue = await open()
          }
          for (let tries = 0; tries < 30 && queue.unsent().unsent.length > 0; tries++) {
            void queue.sendNow()
            await vi.advanceTimersByTimeAsync(80_000)
          }
          expect(queue.unsent()).toMatchObject({ unsent: [], refused: [] })
          expect(server.stored.map(({ id }) => id)).toEqual(all.map(({ id }) => id))
        },
      ),
      { seed: 20260307, numRuns: 150 },
    )
  })
})
