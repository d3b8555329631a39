import { expect, it } from 'vitest'
import { type ConsentFact, consentsOf, exemplarReach, isRecordingStopped, mayKeepVideo } from './consent'

const said = (purpose: ConsentFact['purpose'], given: boolean, recordedAt: number, id = 'a'): ConsentFact => ({
  ...{ id, purpose, given, recordedAt, reach: purpose === 'exemplar' && given ? 'club' : null },
})

it('counts the latest of each purpose, and of two at one instant the one made later', () => {
  const facts = [said('video', true, 1), said('record', false, 5), said('video', false, 3), said('video', true, 2)]
  expect(consentsOf(facts)).toEqual({
    video: said('video', false, 3),
    record: said('record', false, 5),
    exemplar: null,
  })
  const tied = [said('video', true, 3, 'a'), said('video', false, 3, 'b')]
  expect(consentsOf(tied)).toEqual(consentsOf([...tied].reverse()))
  expect(consentsOf(tied).video?.given).toBe(false)
})

it('keeps video only while a consent is in force', () => {
  const kept = (...facts: ConsentFact[]) => mayKeepVideo(consentsOf(facts))
  expect(kept()).toBe(false)
  expect(kept(said('record', true, 1))).toBe(false)
  expect(kept(said('video', true, 1))).toBe(true)
  expect(kept(said('video', true, 1), said('video', false, 2))).toBe(false)
  expect(kept(said('video', true, 1), said('video', false, 2), said('video', true, 3))).toBe(true)
})

it('shows exemplars only with a consent to them and one to video, as far as the latest says', () => {
  const reach = (...facts: ConsentFact[]) => exemplarReach(consentsOf(facts))
  const wider = { ...said('exemplar', true, 4), reach: 'programme' as const }
  expect(reach(said('exemplar', true, 1))).toBeNull()
  expect(reach(said('video', true, 1))).toBeNull()
  expect(reach(said('video', true, 1), said('exemplar', true, 2))).toBe('club')
  expect(reach(said('video', true, 1), said('exemplar', true, 2), wider)).toBe('programme')
  expect(reach(said('video', true, 1), wider, said('exemplar', false, 5))).toBeNull()
  expect(reach(said('video', true, 1), wider, said('video', false, 5))).toBeNull()
})

it('stops what was dived after a withdrawal; a consent that was never recorded stops nothing', () => {
  const stopped = (at: number, ...facts: ConsentFact[]) => isRecordingStopped(consentsOf(facts), at)
  expect(stopped(10)).toBe(false)
  expect(stopped(10, said('record', true, 1))).toBe(false)
  expect([9, 10, 11].map((at) => stopped(at, said('record', true, 1), said('record', false, 10)))).toEqual([
    false,
    true,
    true,
  ])
  expect(stopped(11, said('video', false, 1))).toBe(false)
})
