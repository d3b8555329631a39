import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { anAttempt, anObservation } from '@/tests/support/deck-items'
import type { Held } from '../queue/steps'
import { addFresh, discard, mend, refuse, refusedHere, setAsideChildren, withoutStored } from '../queue/steps'
import { changesTo, heldOf, type OutboxRecord } from './records'

const empty: Held = { unsent: [], refused: [] }
const coach = 'coach-1'

/** What the store does with the changes. */
function written(records: readonly OutboxRecord[], held: Held): OutboxRecord[] {
  const { put, drop } = changesTo(coach, records, held)
  const changed = new Set([...put.map(({ id }) => id), ...drop])
  return [...put, ...records.filter(({ id }) => !changed.has(id))]
}

describe('records of the outbox', () => {
  it('hold what the queue holds, in its order, through any steps', () => {
    const step = fc.record({ what: fc.constantFrom('add', 'store', 'refuse', 'mend', 'discard'), which: fc.nat() })
    fc.assert(
      fc.property(fc.array(step, { maxLength: 40 }), (steps) => {
        let records: OutboxRecord[] = []
        for (const { what, which } of steps) {
          const held = heldOf(records)
          const waiting = held.unsent[which % Math.max(1, held.unsent.length)]
          const bad = held.refused[which % Math.max(1, held.refused.length)]?.item
          const attempt = anAttempt()
          let after = held
          if (what === 'add') after = addFresh(held, [attempt, anObservation(attempt.id)], new Set())
          else if (what === 'store' && waiting) after = withoutStored(held, new Set([waiting.id]))
          else if (what === 'refuse' && waiting)
            after = setAsideChildren(refuse(held, [refusedHere(waiting, 'malformed', 'no')]))
          else if (what === 'mend' && bad) after = mend(held, bad.id, { ...bad, id: anAttempt().id })
          else if (what === 'discard' && bad) after = discard(held, bad.id).held
          records = written(records, after)
          expect(heldOf(records)).toEqual(after)
          expect(records.every((record) => record.coach === coach)).toBe(true)
        }
      }),
      { seed: 20260307, numRuns: 300 },
    )
  })

  it('are written only where something changed', () => {
    const [first, second, third] = [anAttempt(), anAttempt(), anAttempt()]
    const records = written([], addFresh(empty, [first, second], new Set()))
    const held = heldOf(records)
    expect(changesTo(coach, records, held)).toEqual({ put: [], drop: [] })
    const more = changesTo(coach, records, addFresh(withoutStored(held, new Set([first.id])), [third], new Set()))
    expect(more).toEqual({ put: [{ coach, id: third.id, order: 3, item: third, answer: null }], drop: [first.id] })
  })
})
