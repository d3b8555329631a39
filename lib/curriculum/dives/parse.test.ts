import { describe, expect, it } from 'vitest'
import { parseDive } from './parse'
import type { DiveErrorCode } from './refusal'

const refusals: readonly (readonly [string, DiveErrorCode, string])[] = [
  ['', 'empty', 'no dive number was given; write one such as 103B'],
  ['  ', 'empty', 'no dive number was given; write one such as 103B'],
  ['B401', 'not a dive number', 'a dive is written as three or four digits and a position letter, such as 103B'],
  ['401BB', 'not a dive number', 'a dive is written as three or four digits and a position letter, such as 103B'],
  ['４０１B', 'not a dive number', 'a dive is written as three or four digits and a position letter, such as 103B'],
  ['401½', 'not a dive number', 'a dive is written as three or four digits and a position letter, such as 103B'],
  [
    '701B',
    'unknown group',
    'group 7 does not exist; the first digit is 1 forward, 2 back, 3 reverse, 4 inward, 5 twisting or 6 armstand',
  ],
  ['40B', 'digit count', 'group 4 takes three or four digits'],
  ['40111B', 'digit count', 'group 4 takes three or four digits'],
  ['521A', 'digit count', 'group 5 takes four digits: group, direction, half somersaults, half twists'],
  ['62B', 'digit count', 'group 6 takes three digits, or four with a twist'],
  ['401', 'no position', 'the position is missing; add A straight, B pike, C tuck or D free'],
  ['401E', 'unknown position', 'position E does not exist; it is A straight, B pike, C tuck or D free'],
  ['421B', 'flying digit', 'the second digit of group 4 is 0, or 1 for flying; it is 2'],
  ['100A', 'somersaults', 'the digits after the second count half somersaults; at least 1 is needed'],
  ['1000A', 'somersaults', 'the digits after the second count half somersaults; at least 1 is needed'],
  ['1009C', 'somersaults', 'four digits are for more than 4½ somersaults; write 109'],
  ['111B', 'flying', 'a flying dive needs at least one somersault, so its third digit is 2 or more'],
  ['113A', 'flying', 'a flying dive ends in pike or tuck; take B or C'],
  [
    '5511A',
    'unknown direction',
    'the second digit of a twisting dive is its direction, 1 forward to 4 inward; 5 does not exist',
  ],
  ['5201A', 'somersaults', 'the third digit of a twisting dive counts half somersaults and is 1 to 9'],
  ['5230D', 'twists', 'the fourth digit counts half twists and is 1 to 9; without a twist write 203'],
  ['103D', 'free without twist', 'position D (free) is for dives with a twist only; take A, B or C'],
  ['624D', 'free without twist', 'position D (free) is for dives with a twist only; take A, B or C'],
  ['5211D', 'twist position', 'a twisting dive with ½ somersault takes A, B or C, not D'],
  ['5223A', 'twist position', 'a twisting dive with 1 or 1½ somersaults takes D, not A'],
  ['5253A', 'twist position', 'a twisting dive with 2 or more somersaults takes B or C, not A'],
  [
    '641B',
    'unknown direction',
    'the second digit of an armstand dive is 0 for none, 1 forward, 2 back or 3 reverse; 4 does not exist',
  ],
  ['602B', 'somersaults', 'an armstand dive has a direction and half somersaults, or 0 for both'],
  ['610B', 'somersaults', 'an armstand dive has a direction and half somersaults, or 0 for both'],
  ['6240B', 'twists', 'the fourth digit counts half twists and is 1 to 9; without a twist write 624'],
]

describe('parseDive', () => {
  it.each(refusals)('refuses "%s" (%s): %s', (text, code, message) => {
    expect(parseDive(text)).toEqual({ ok: false, error: { code, message, text } })
  })

  it('reads lower case and spaces', () => {
    expect(parseDive(' 5 231 d')).toEqual({
      ok: true,
      dive: {
        canonical: '5231D',
        family: 'twisting',
        direction: 'back',
        flying: false,
        halfSomersaults: 3,
        halfTwists: 1,
        position: 'D',
      },
    })
  })

  it('reads flying dives above 4½ somersaults', () => {
    expect(parseDive('1111C')).toMatchObject({ dive: { canonical: '1111C', flying: true, halfSomersaults: 11 } })
  })
})
