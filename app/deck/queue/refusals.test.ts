import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { batchLimit } from '@/lib/assessment/deck/limits'
import { aCall, anAttempt, anIncident, anObservation } from '@/tests/support/deck-items'
import {
  accept,
  ids,
  longest,
  refusing,
  scriptedServer,
  settleDown,
  unreachable,
} from '@/tests/support/scripted-server'
import { memoryOutbox } from './outbox'
import { openQueue } from './outbox-queue'

beforeEach(() => vi.useFakeTimers())
afterEach(() => vi.useRealTimers())

describe('refusals', () => {
  it('moves a refused item aside with its reason; the others are stored', async () => {
    const [good, bad] = [anAttempt(), anAttempt()]
    const { send } = scriptedServer(refusing(bad.id))
    const queue = await openQueue(memoryOutbox(), send, { random: longest })
    await queue.add([bad, good])
    await settleDown()
    expect(queue.unsent().unsent).toEqual([])
    expect(queue.unsent().refused).toEqual([
      {
        item: bad,
        answer: {
          id: bad.id,
          result: 'refused',
          code: 'malformed',
          message: 'a rating is 0, 1, 2, 3 or 4',
          field: 'ratings',
        },
      },
    ])
  })

  it('sets later children of a refused call aside without asking the server', async () => {
    const call = aCall()
    const attempt = anAttempt({ call: { id: call.id, number: 1 } })
    const seen = anObservation(attempt.id)
    const other = anAttempt()
    const { send, tries } = scriptedServer(refusing(call.id), accept)
    const queue = await openQueue(memoryOutbox(), send, { random: longest })
    await queue.add([call])
    await settleDown()
    await queue.add([attempt, seen, other])
    await settleDown()
    expect(tries.map(ids)).toEqual([[call.id], [other.id]])
    expect(queue.unsent().refused.map(({ item, answer }) => [item.id, answer.code])).toEqual([
      [call.id, 'malformed'],
      [attempt.id, 'parent refused'],
      [seen.id, 'parent refused'],
    ])
  })

  it('sends an incident whatever became of its attempt', async () => {
    const attempt = anAttempt()
    const incident = anIncident({ attempt: attempt.id })
    const { send, tries } = scriptedServer(refusing(attempt.id), accept)
    const queue = await openQueue(memoryOutbox(), send, { random: longest })
    await queue.add([attempt])
    await settleDown()
    await queue.add([incident])
    await settleDown()
    expect(tries.map(ids)).toEqual([[attempt.id], [incident.id]])
    expect(queue.unsent().refused.map(({ item }) => item.id)).toEqual([attempt.id])
  })

  it('sends a mended item again under its id, and its children after it', async () => {
    const attempt = anAttempt()
    const seen = anObservation(attempt.id)
    const { send, tries } = scriptedServer(refusing(attempt.id), accept)
    const queue = await openQueue(memoryOutbox(), send, { random: longest })
    await queue.add([attempt, seen])
    await settleDown()
    expect(queue.unsent().refused).toHaveLength(2)
    const mended = { ...attempt, cued: true }
    await queue.mend(attempt.id, mended)
    await settleDown()
    expect(tries[1]).toEqual([mended, seen])
    expect(queue.unsent()).toMatchObject({ unsent: [], refused: [] })
  })

  it('turns the children to the new id when an item takes one', async () => {
    const attempt = anAttempt()
    const seen = anObservation(attempt.id)
    const correction = anObservation(attempt.id, { supersedes: { id: seen.id, reason: 'wrong button' } })
    const { send, tries } = scriptedServer(refusing(attempt.id, { code: 'same id, other content' }), accept)
    const queue = await openQueue(memoryOutbox(), send, { random: longest })
    await queue.add([attempt, seen, correction])
    await settleDown()
    const renewed = { ...attempt, id: anAttempt().id }
    await queue.mend(attempt.id, renewed)
    await settleDown()
    expect(tries[1]).toEqual([renewed, { ...seen, attempt: renewed.id }, { ...correction, attempt: renewed.id }])
  })

  it('leaves a child that was refused for a reason of its own where it is', async () => {
    const attempt = anAttempt()
    const seen = anObservation(attempt.id)
    const { send } = scriptedServer(refusing(attempt.id))
    const queue = await openQueue(memoryOutbox(), send, { random: longest })
    await queue.add([attempt, seen])
    await settleDown()
    await queue.mend(seen.id)
    await settleDown()
    // Its attempt is still refused, so it comes back.
    expect(queue.unsent().refused.map(({ item }) => item.id)).toEqual([attempt.id, seen.id])
  })

  it('mends nothing that was not refused', async () => {
    const { send, tries } = scriptedServer(() => unreachable)
    const queue = await openQueue(memoryOutbox(), send, { random: longest })
    const attempt = anAttempt()
    await queue.add([attempt])
    await settleDown()
    await queue.mend(attempt.id, { ...attempt, cued: true })
    expect(queue.unsent().unsent).toEqual([attempt])
    expect(await queue.discard(attempt.id)).toEqual([])
    expect(tries).toHaveLength(1)
  })

  it('discards a refused item with all that rests on it, and says what went', async () => {
    const call = aCall()
    const attempt = anAttempt({ call: { id: call.id, number: 1 } })
    const seen = anObservation(attempt.id)
    const { send } = scriptedServer(refusing(call.id), () => unreachable)
    const queue = await openQueue(memoryOutbox(), send, { random: longest })
    await queue.add([call])
    await settleDown()
    const other = anAttempt()
    await queue.add([other, attempt, seen])
    await settleDown()
    expect(await queue.discard(call.id)).toEqual([call.id, attempt.id, seen.id])
    expect(queue.unsent().refused).toEqual([])
    expect(queue.unsent().unsent).toEqual([other])
  })

  it('finds the item at fault when the server rejects a whole batch, and stores the others', async () => {
    const attempts = Array.from({ length: 9 }, () => anAttempt())
    const bad = attempts[5]
    const { send, tries } = scriptedServer((items) =>
      items.some(({ id }) => id === bad?.id)
        ? { kind: 'rejected', message: 'The server answered 400.' }
        : accept(items),
    )
    const queue = await openQueue(memoryOutbox(), send, { random: longest })
    await queue.add(attempts)
    await settleDown()
    expect(queue.unsent().unsent).toEqual([])
    expect(queue.unsent().refused.map(({ item }) => item)).toEqual([bad])
    const stored = tries.filter((batch) => !batch.some(({ id }) => id === bad?.id)).flat()
    expect(ids(stored)).toEqual(ids(attempts.filter((attempt) => attempt !== bad)))
  })

  it('refuses by itself what is too large for any batch, and sends what follows', async () => {
    const { send, tries } = scriptedServer()
    const queue = await openQueue(memoryOutbox(), send, { random: longest })
    const attempt = anAttempt()
    const huge = anObservation(attempt.id, { note: 'x'.repeat(batchLimit.bytes) })
    const next = anAttempt()
    await queue.add([attempt, huge, next])
    await settleDown()
    expect(queue.unsent().refused).toMatchObject([{ item: { id: huge.id }, answer: { code: 'malformed' } }])
    expect(tries.flat()).toEqual([attempt, next])
  })
})
