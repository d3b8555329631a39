import { describe, expect, it } from 'vitest'
import { canonicalJson, refuseDuplicateKeys } from './canonical'

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

describe('refuseDuplicateKeys', () => {
  it.each([
    ['{"a":1,"a":1}', '/a'],
    ['{"a":1,"b":{"c":[0,{"d":1,"e":2,"d":3}]}}', '/b/c/1/d'],
    ['{"a":1,"\\u0061":2}', '/a'],
    ['[{"x,y":"{","x,y":2}]', '/0/x,y'],
    ['{"":{"":1,"":2}}', '//'],
    ['{"__proto__":1,"__proto__":2}', '/__proto__'],
  ])('names the place in %s', (text, path) => {
    expect(() => refuseDuplicateKeys(text)).toThrow(`${path}: the key stands twice in the same object`)
    expect(() => refuseDuplicateKeys(text)).toThrow(expect.objectContaining({ path }))
  })

  it.each([
    '{"a":{"a":[{"a":1},{"a":2}]},"b":"a"}',
    '{"a":"b","b":"a"}',
    '["a","a"]',
    '{"a":"\\"a\\":1,\\"a\\":2","\\"":1,"\\\\":2}',
    '"a"',
    '7',
  ])('accepts %s', (text) => {
    expect(() => refuseDuplicateKeys(text)).not.toThrow()
  })

  it('leaves malformed text to the parser', () => {
    expect(() => refuseDuplicateKeys('{"a":1,"a":')).toThrow(SyntaxError)
  })

  it('reads long strings and deep nesting', () => {
    const deep = 20_000
    expect(() => refuseDuplicateKeys(`["${'a\\n'.repeat(500_000)}"]`)).not.toThrow()
    expect(() => refuseDuplicateKeys('['.repeat(deep) + ']'.repeat(deep))).not.toThrow()
  })
})
