import { expect, it } from 'vitest'
import { lostBy, sayLost } from './say-lost'

const host = 'films.example'

it('claims of a film no more than the browser can tell', () => {
  expect([1, 2, 3, 4, undefined].map(lostBy)).toEqual(['refused', 'broke off', 'not readable', 'refused', 'refused'])
  expect(sayLost({ lost: 'refused', host, isEvidence: true })).toBe(
    'Evidence not reachable: the film could not be played here. It may be gone, or this browser cannot play it: open it at films.example to see. The moment stays on the record with all that rests on it.',
  )
  expect(sayLost({ lost: 'not readable', host: null, isEvidence: true })).toContain('this browser cannot play it')
  expect(sayLost({ lost: 'broke off', host, isEvidence: true })).not.toContain('gone')
})

it('says nothing of evidence or a record where a film is only an example', () => {
  expect(sayLost({ lost: 'refused', host: null, isEvidence: false })).toBe(
    'The film could not be played here. It may be gone, or this browser cannot play it: open it in a new window to see.',
  )
})
