import { describe, expect, it } from 'vitest'
import { canonicalJson } from './canonical'

describe('canonicalJson refuses what JSON would drop or change, with the place', () => {
  const itself: { inside: unknown[] } = { inside: [] }
  itself.inside.push(itself)

  it.each([
    ['undefined', { a: { b: undefined } }, '/a/b: undefined is not a JSON value'],
    ['a hole', Object.assign([1], { length: 3 }), '/1: undefined is not a JSON value'],
    ['a function', { a: () => 1 }, '/a: function is not a JSON value'],
    ['a symbol', [Symbol('a')], '/0: symbol is not a JSON value'],
    ['a bigint', 1n, 'the document: bigint is not a JSON value'],
    ['NaN', { 'a/b': [0, Number.NaN] }, '/a~1b/1: NaN is not a number that JSON can write'],
    ['infinity', { 'a~b': -Infinity }, '/a~0b: -Infinity is not a number that JSON can write'],
    ['a lone surrogate', { a: 'x\ud83d' }, '/a: half of a surrogate pair'],
    ['a lone surrogate in a key', { a: { '\ude02': 1 } }, '/a: in a key, half of a surrogate pair'],
    ['a date', { at: new Date(0) }, '/at: only plain objects are JSON'],
    ['a map', new Map([['a', 1]]), 'the document: only plain objects are JSON'],
    ['a value inside itself', itself, '/inside/0: the value contains itself'],
  ])('%s', (_what, value, message) => {
    expect(() => canonicalJson(value)).toThrow(message)
  })

  it('writes whole surrogate pairs, and a value that stands in two places', () => {
    const twice = { smile: '😂' }
    expect(canonicalJson({ b: twice, a: [twice, null] })).toBe('{"a":[{"smile":"😂"},null],"b":{"smile":"😂"}}')
  })
})
