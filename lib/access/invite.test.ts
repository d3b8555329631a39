import { describe, expect, it } from 'vitest'
import type { Actor } from './actor'
import { invitationState, mayInvite, type Offer, refuseAcceptance } from './invite'
import { mayManage } from './posts'
import { transferStep } from './transfer'

const actor = (changes: Partial<Actor> = {}): Actor => ({
  account: 'ann',
  session: 's',
  name: 'Ann',
  initials: 'A',
  programme: { id: 'coast', name: 'Coast', zone: 'UTC', isDemo: false, clockOffset: 0 },
  clubs: [],
  programmeRoles: [],
  ...changes,
})
const post = (club: string, role: 'assistant' | 'head') => ({ club, clubName: club, zone: 'UTC', role })
const headOf = (club: string) => actor({ clubs: [post(club, 'head')] })
const lead = actor({ programmeRoles: ['lead'] })
const everybody = {
  head: headOf('north'),
  assistant: actor({ clubs: [post('north', 'assistant')] }),
  lead,
  reviewer: actor({ programmeRoles: ['reviewer'] }),
}

describe('who may invite whom', () => {
  const offers: readonly [Offer, readonly (keyof typeof everybody)[]][] = [
    [{ role: 'assistant', club: 'north' }, ['head']],
    [{ role: 'assistant', club: 'south' }, []],
    [{ role: 'head', club: 'north' }, ['lead']],
    [{ role: 'reviewer', club: null }, ['lead']],
    [{ role: 'lead', club: null }, ['lead']],
  ]
  it.each(offers)('%o: %j', (offer, may) => {
    const found = Object.entries(everybody).flatMap(([who, one]) => (mayInvite(one, offer) ? [who] : []))
    expect(found).toEqual(may)
  })
})

describe('what becomes of an invitation', () => {
  const open = { expiresAt: 10, withdrawnAt: null, acceptedAt: null }
  it('is open until its last moment, and then expired', () => {
    expect([9, 10, 11].map((now) => invitationState(open, now))).toEqual(['open', 'expired', 'expired'])
  })
  it('stays accepted or withdrawn whenever it is looked at', () => {
    expect(invitationState({ ...open, withdrawnAt: 5 }, 20)).toBe('withdrawn')
    expect(invitationState({ ...open, withdrawnAt: 5, acceptedAt: 4 }, 20)).toBe('accepted')
  })
})

describe('who gains by accepting', () => {
  it('takes a post in another club, and a head coach’s in the club where one assists', () => {
    expect(refuseAcceptance(headOf('north'), { role: 'assistant', club: 'south' }, 'coast')).toBeNull()
    expect(refuseAcceptance(everybody.assistant, { role: 'head', club: 'north' }, 'coast')).toBeNull()
  })
  it('takes no post that one has, none that is less, and none of another programme', () => {
    expect(refuseAcceptance(everybody.assistant, { role: 'assistant', club: 'north' }, 'coast')).toMatch(/already/)
    expect(refuseAcceptance(headOf('north'), { role: 'assistant', club: 'north' }, 'coast')).toMatch(/head coach/)
    expect(refuseAcceptance(lead, { role: 'lead', club: null }, 'coast')).toMatch(/already/)
    expect(refuseAcceptance(lead, { role: 'head', club: 'north' }, 'bay')).toMatch(/another programme/)
  })
})

describe('who ends a post and sets its scope', () => {
  const posts = {
    assistant: { account: 'ben', club: 'north', role: 'assistant' },
    head: { account: 'cai', club: 'north', role: 'head' },
  }
  it('is the head coach for assistants, the lead for all, nobody for herself', () => {
    expect(mayManage(headOf('north'), posts.assistant)).toBe(true)
    expect(mayManage(headOf('south'), posts.assistant)).toBe(false)
    expect(mayManage(headOf('north'), posts.head)).toBe(false)
    expect(mayManage(everybody.assistant, posts.assistant)).toBe(false)
    expect(mayManage(everybody.reviewer, posts.assistant)).toBe(false)
    expect(mayManage(lead, posts.head)).toBe(true)
    expect(mayManage(lead, { account: 'ann', club: null, role: 'lead' })).toBe(false)
  })
})

describe('how a transfer stands', () => {
  const open = { fromClub: 'north', toClub: 'south', proposedFor: 'north', agreedAt: null, endedAt: null }
  it('waits for the club that did not propose it', () => {
    expect(transferStep(open, ['south'])).toBe('to agree')
    expect(transferStep(open, ['north'])).toBe('waiting')
    expect(transferStep({ ...open, proposedFor: 'south' }, ['north'])).toBe('to agree')
    expect(transferStep({ ...open, agreedAt: 1 }, ['south'])).toBe('complete')
    expect(transferStep({ ...open, endedAt: 1 }, ['south'])).toBe('ended')
  })
})
