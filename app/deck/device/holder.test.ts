import { describe, expect, it } from 'vitest'
import { holderCookie } from '@/lib/assessment/deck/holder'
import { holderIn } from './holder'

describe('holderIn', () => {
  it.each([
    ['', null],
    [`${holderCookie}=`, null],
    [`${holderCookie}=ab-1`, 'ab-1'],
    [`other=1; ${holderCookie}=ab-1; last=2`, 'ab-1'],
    [`x${holderCookie}=ab-1`, null],
  ])('reads %j as %j', (cookies, account) => expect(holderIn(cookies)).toBe(account))
})
