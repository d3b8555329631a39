import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import type { DeckItem } from '@/lib/assessment/deck/contract'
import { batchLimit } from '@/lib/assessment/deck/limits'
import { anAttempt, anObservation } from '@/tests/support/deck-items'
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
import type { Send, SendResult } from './transport'
import { patience } from './try-send'

beforeEach(() => vi.useFakeTimers())
afterEach(() => vi.useRealTimers())

describe('sending', () => {
  it('sends what is added, in order, and lets go of it when the server has it', async () => {
    const { send, tries } = scriptedServer()
    const queue = await openQueue(memoryOutbox(), send, { random: longest })
    const attempt = anAttempt()
    const seen = anObservation(attempt.id)
    await queue.add([attempt, seen])
    expect(queue.unsent().unsent).toEqual([attempt, seen])
    await settleDown()
    expect(tries).toEqual([[attempt, seen]])
    expect(queue.unsent()).toMatchObject({ unsent: [], refused: [], sending: 'idle', problem: null })
    expect(queue.unsent().lastSentAt).toBe(Date.now())
  })

  it('says once what the server keeps without a part of it', async () => {
    const attempt = anAttempt()
    const seen = anObservation(attempt.id)
    const keptWithout = { moments: ['m'], message: 'the rating is kept without its video' }
    const { send } = scriptedServer((items) => ({
      kind: 'answered',
      answers: items.map(({ id }) => ({ id, result: 'accepted', ...(id === seen.id ? { keptWithout } : {}) })),
    }))
    const queue = await openQueue(memoryOutbox(), send, { random: longest })
    await queue.add([attempt, seen])
    await settleDown()
    expect(queue.unsent()).toMatchObject({
      unsent: [],
      refused: [],
      keptWithout: [{ item: seen, message: keptWithout.message }],
    })
    queue.told()
    expect(queue.unsent().keptWithout).toEqual([])
  })

  it('takes "known" as well as "accepted", so that a batch sent twice is safe', async () => {
    const { send, tries } = scriptedServer((items) => ({
      kind: 'answered',
      answers: items.map(({ id }) => ({ id, result: 'known' })),
    }))
    const queue = await openQueue(memoryOutbox(), send, { random: longest })
    await queue.add([anAttempt()])
    await settleDown()
    expect(tries).toHaveLength(1)
    expect(queue.unsent().unsent).toEqual([])
  })

  it('has one sender at a time: what is added meanwhile goes with the next batch', async () => {
    let release: (result: SendResult) => void = () => {}
    const { send, tries } = scriptedServer(
      () =>
        new Promise<SendResult>((resolve) => {
          release = resolve
        }),
      accept,
    )
    const queue = await openQueue(memoryOutbox(), send, { random: longest })
    const [first, second, third] = [anAttempt(), anAttempt(), anAttempt()]
    await queue.add([first])
    await settleDown()
    await queue.add([second])
    await queue.add([third])
    void queue.sendNow()
    await settleDown()
    expect(tries).toHaveLength(1)
    expect(queue.unsent().sending).toBe('sending')
    release(accept([first]))
    await settleDown()
    expect(tries.map(ids)).toEqual([[first.id], [second.id, third.id]])
    expect(queue.unsent().unsent).toEqual([])
  })

  it('tries again for a listener that adds something the moment the queue falls idle', async () => {
    const { send, tries } = scriptedServer()
    const queue = await openQueue(memoryOutbox(), send, { random: longest })
    const late = anAttempt()
    let added = false
    queue.subscribe(() => {
      if (added || tries.length === 0 || queue.unsent().sending !== 'idle') return
      added = true
      void queue.add([late])
    })
    await queue.add([anAttempt()])
    await settleDown()
    expect(tries.at(-1)).toEqual([late])
  })

  it('splits by number', async () => {
    const { send, tries } = scriptedServer()
    const queue = await openQueue(memoryOutbox(), send, { random: longest })
    const attempts = Array.from({ length: batchLimit.items + 1 }, () => anAttempt())
    await queue.add(attempts)
    await settleDown()
    expect(tries.map((batch) => batch.length)).toEqual([batchLimit.items, 1])
    expect(tries.flat()).toEqual(attempts)
  })

  it('adds the same id once, whether it waits, was refused or is already stored', async () => {
    const refused = anAttempt()
    const { send, tries } = scriptedServer(refusing(refused.id), accept)
    const queue = await openQueue(memoryOutbox(), send, { random: longest })
    const attempt = anAttempt()
    await queue.add([attempt, attempt, refused])
    await queue.add([attempt])
    await settleDown()
    await queue.add([attempt, refused])
    await settleDown()
    expect(tries.map(ids)).toEqual([[attempt.id, refused.id]])
    expect(queue.unsent().unsent).toEqual([])
    expect(queue.unsent().refused).toHaveLength(1)
  })

  it('tells its listeners of every change until they leave', async () => {
    const queue = await openQueue(memoryOutbox(), scriptedServer().send, { random: longest })
    const counts: number[] = []
    const leave = queue.subscribe(() => counts.push(queue.unsent().unsent.length))
    await queue.add([anAttempt()])
    await settleDown()
    expect(counts[0]).toBe(1)
    expect(counts.at(-1)).toBe(0)
    const heard = counts.length
    leave()
    await queue.add([anAttempt()])
    expect(counts).toHaveLength(heard)
  })
})

describe('failures', () => {
  it('waits twice as long after each failure, up to a minute, and starts again at a second after a success', async () => {
    const { send, tries } = scriptedServer(
      ...Array.from({ length: 8 }, () => () => unreachable),
      accept,
      () => unreachable,
    )
    const queue = await openQueue(memoryOutbox(), send, { random: longest })
    await queue.add([anAttempt()])
    await settleDown()
    for (const seconds of [1, 2, 4, 8, 16, 32, 60, 60]) {
      expect(queue.unsent()).toMatchObject({ sending: 'waiting', retryAt: Date.now() + seconds * 1000 })
      expect(queue.unsent().problem).toBe('no network')
      const before = tries.length
      await vi.advanceTimersByTimeAsync(seconds * 1000 - 1)
      expect(tries).toHaveLength(before)
      await vi.advanceTimersByTimeAsync(1)
      expect(tries).toHaveLength(before + 1)
    }
    expect(queue.unsent()).toMatchObject({ unsent: [], sending: 'idle', retryAt: null, problem: null })
    await queue.add([anAttempt()])
    await settleDown()
    expect(queue.unsent().retryAt).toBe(Date.now() + 1000)
  })

  it('spreads the retries: half of each wait is random', async () => {
    const queue = await openQueue(memoryOutbox(), scriptedServer(() => unreachable).send, { random: () => 0 })
    await queue.add([anAttempt()])
    await settleDown()
    expect(queue.unsent().retryAt).toBe(Date.now() + patience.first / 2)
  })

  it('is not hurried by a new rating while it waits, but tries at once when told to', async () => {
    const { send, tries } = scriptedServer(() => unreachable, accept)
    const queue = await openQueue(memoryOutbox(), send, { random: longest })
    const [first, second] = [anAttempt(), anAttempt()]
    await queue.add([first])
    await settleDown()
    await queue.add([second])
    await settleDown()
    expect(tries).toHaveLength(1)
    await queue.sendNow()
    expect(tries[1]).toEqual([first, second])
    await vi.advanceTimersByTimeAsync(120_000)
    expect(tries).toHaveLength(2)
  })

  it('gives up a try that nobody answers, keeps everything and takes the late answer for nothing', async () => {
    let aborted = false
    let answerLate: (result: SendResult) => void = () => {}
    const tries: (readonly DeckItem[])[] = []
    const send: Send = (items, signal) => {
      tries.push(items)
      if (tries.length > 1) return Promise.resolve(accept(items))
      signal.addEventListener('abort', () => {
        aborted = true
      })
      return new Promise((resolve) => {
        answerLate = resolve
      })
    }
    const queue = await openQueue(memoryOutbox(), send, { random: longest })
    const attempt = anAttempt()
    await queue.add([attempt])
    await vi.advanceTimersByTimeAsync(patience.giveUp)
    expect(aborted).toBe(true)
    expect(queue.unsent()).toMatchObject({ unsent: [attempt], sending: 'waiting' })
    answerLate(accept([attempt]))
    await settleDown()
    expect(queue.unsent().unsent).toEqual([attempt])
    await vi.advanceTimersByTimeAsync(1000)
    expect(tries).toHaveLength(2)
    expect(queue.unsent().unsent).toEqual([])
  })

  it('keeps everything when the carrier itself throws', async () => {
    const queue = await openQueue(memoryOutbox(), () => Promise.reject(new Error('boom')), { random: longest })
    await queue.add([anAttempt()])
    await settleDown()
    expect(queue.unsent()).toMatchObject({ sending: 'waiting', unsent: [{ kind: 'attempt' }] })
  })

  it('keeps what was not answered and sends it again at once; an empty answer waits', async () => {
    const [first, second] = [anAttempt(), anAttempt()]
    const { send, tries } = scriptedServer(
      () => accept([first]),
      () => accept([]),
      accept,
    )
    const queue = await openQueue(memoryOutbox(), send, { random: longest })
    await queue.add([first, second])
    await settleDown()
    expect(tries.map(ids)).toEqual([[first.id, second.id], [second.id]])
    expect(queue.unsent()).toMatchObject({ unsent: [second], sending: 'waiting' })
    await vi.advanceTimersByTimeAsync(1000)
    expect(queue.unsent().unsent).toEqual([])
  })

  it('ignores answers for ids that it did not send', async () => {
    const [first, second] = [anAttempt(), anAttempt()]
    const { send } = scriptedServer(
      () => accept([first, second]),
      () => unreachable,
    )
    const queue = await openQueue(memoryOutbox(), send, { random: longest })
    await queue.add([first])
    await settleDown()
    await queue.add([second])
    await settleDown()
    expect(queue.unsent().unsent).toEqual([second])
  })

  it('keeps everything on 401 and asks for no more until told to', async () => {
    const { send, tries } = scriptedServer(() => ({ kind: 'signed out', message: 'sign in' }), accept)
    const queue = await openQueue(memoryOutbox(), send, { random: longest })
    const [first, second] = [anAttempt(), anAttempt()]
    await queue.add([first])
    await settleDown()
    expect(queue.unsent()).toMatchObject({ unsent: [first], sending: 'signed out', problem: 'sign in' })
    await queue.add([second])
    await vi.advanceTimersByTimeAsync(600_000)
    expect(tries).toHaveLength(1)
    await queue.sendNow()
    expect(tries[1]).toEqual([first, second])
    expect(queue.unsent()).toMatchObject({ unsent: [], sending: 'idle' })
  })
})

describe('an outbox that fails', () => {
  const failing = (name: string) => {
    const inner = memoryOutbox()
    let broken = false
    return {
      breakIt: (yes: boolean) => {
        broken = yes
      },
      outbox: {
        ...inner,
        change: (step: Parameters<typeof inner.change>[0]) =>
          broken ? Promise.reject(Object.assign(new Error(name), { name })) : inner.change(step),
      },
    }
  }

  it.each([
    ['QuotaExceededError', 'no room left on this phone'],
    ['UnknownError', 'could not keep it'],
  ])('says so on %s, keeps nothing of it and goes on with the next', async (name, words) => {
    const { outbox, breakIt } = failing(name)
    const { send } = scriptedServer(() => unreachable)
    const queue = await openQueue(outbox, send, { random: longest })
    const [first, second] = [anAttempt(), anAttempt()]
    await queue.add([first])
    breakIt(true)
    await expect(queue.add([second])).rejects.toThrow(name)
    expect(queue.unsent()).toMatchObject({ unsent: [first], unkept: expect.stringContaining(words) })
    breakIt(false)
    await queue.add([second])
    expect(queue.unsent()).toMatchObject({ unsent: [first, second], unkept: null })
  })

  it('sends again what the server took while the outbox could not note it', async () => {
    const { outbox, breakIt } = failing('UnknownError')
    const { send, tries } = scriptedServer((items) => {
      breakIt(tries.length === 1)
      return accept(items)
    })
    const queue = await openQueue(outbox, send, { random: longest })
    const attempt = anAttempt()
    await queue.add([attempt])
    await settleDown()
    expect(queue.unsent()).toMatchObject({ unsent: [attempt], sending: 'waiting' })
    breakIt(false)
    await vi.advanceTimersByTimeAsync(1000)
    expect(tries.map(ids)).toEqual([[attempt.id], [attempt.id]])
    expect(queue.unsent()).toMatchObject({ unsent: [], sending: 'idle' })
  })

  it('takes over what another page left, and hears of what it changes', async () => {
    const inner = memoryOutbox()
    const listeners = new Set<() => void>()
    const outbox = {
      change: inner.change,
      subscribe: (listener: () => void) => {
        listeners.add(listener)
        return () => listeners.delete(listener)
      },
    }
    const [left, later] = [anAttempt(), anAttempt()]
    await inner.change(() => ({ unsent: [left], refused: [] }))
    const { send, tries } = scriptedServer()
    const queue = await openQueue(outbox, send, { random: longest })
    expect(queue.unsent().unsent).toEqual([left])
    await settleDown()
    await inner.change((held) => ({ ...held, unsent: [later] }))
    for (const listener of listeners) listener()
    await settleDown()
    expect(tries.map(ids)).toEqual([[left.id], [later.id]])
    expect(queue.unsent().unsent).toEqual([])
  })
})
