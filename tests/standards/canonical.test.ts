import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { canonicalJson } from '../../lib/curriculum/canonical'
import { sha256Hex } from '../../lib/curriculum/digest'

const seed = 8785
const folder = fileURLToPath(new URL('../fixtures/standards/jcs-rfc8785/', import.meta.url))
const read = (name: string) => readFileSync(folder + name)

// Test data of RFC 8785: cyberphone/json-canonicalization, testdata/ (Apache-2.0, Anders Rundgren).
describe('the test data of RFC 8785', () => {
  it.each(['arrays', 'french', 'structures', 'unicode', 'values', 'weird'])('%s', (name) => {
    const canonical = canonicalJson(JSON.parse(read(`input/${name}.json`).toString('utf8')))
    const bytes = Buffer.from(canonical, 'utf8')
    expect(canonical).toBe(read(`output/${name}.json`).toString('utf8'))
    expect(bytes.toString('hex')).toBe(read(`outhex/${name}.txt`).toString('utf8').replace(/\s/g, '').toLowerCase())
  })

  // RFC 8785 appendix B, from memory: IEEE 754 bytes and the text that ECMAScript writes for them.
  it.each([
    ['0000000000000000', '0'],
    ['8000000000000000', '0'],
    ['0000000000000001', '5e-324'],
    ['7fefffffffffffff', '1.7976931348623157e+308'],
    ['4340000000000000', '9007199254740992'],
    ['4430000000000000', '295147905179352830000'],
    ['44b52d02c7e14af5', '9.999999999999997e+22'],
    ['44b52d02c7e14af6', '1e+23'],
    ['444b1ae4d6e2ef4e', '999999999999999700000'],
    ['444b1ae4d6e2ef50', '1e+21'],
    ['3eb0c6f7a0b5ed8c', '9.999999999999997e-7'],
    ['3eb0c6f7a0b5ed8d', '0.000001'],
    ['41b3de4355555555', '333333333.3333333'],
    ['becbf647612f3696', '-0.0000033333333333333333'],
    ['43143ff3c1cb0959', '1424953923781206.2'],
  ])('number %s is %s', (hex, text) => {
    expect(canonicalJson(Buffer.from(hex, 'hex').readDoubleBE())).toBe(text)
  })

  it.each(['7fffffffffffffff', '7ff0000000000000'])('number %s is refused', (hex) => {
    expect(() => canonicalJson(Buffer.from(hex, 'hex').readDoubleBE())).toThrow('is not a number that JSON can write')
  })
})

describe('laws of the canonical form', () => {
  const json = fc.jsonValue({ maxDepth: 5 })

  it('reading it and writing it again gives the same bytes', () => {
    fc.assert(
      fc.property(json, (value) => {
        const canonical = canonicalJson(value)
        expect(canonicalJson(JSON.parse(canonical))).toBe(canonical)
        // -0 is written as 0, so the value read back is compared after a trip through JSON.
        expect(JSON.parse(canonical)).toEqual(JSON.parse(JSON.stringify(value)))
      }),
      { seed, numRuns: 1000 },
    )
  })

  it('does not depend on the order of keys', () => {
    const objects = fc.dictionary(fc.string(), json, { noNullPrototype: true })
    fc.assert(
      fc.property(objects, (value) => {
        expect(canonicalJson(Object.fromEntries(Object.entries(value).reverse()))).toBe(canonicalJson(value))
      }),
      { seed },
    )
  })
})

// NIST's example values for SHA-256 (FIPS 180-4), from memory: one block, two blocks, the empty message.
describe('SHA-256', () => {
  it.each([
    ['abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
    [
      'abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq',
      '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
    ],
    // Not ASCII, so that the encoding shows; computed with Python's hashlib over the UTF-8 bytes.
    ['½', '83895be7a983fb6e64c5872854b4a2feb316620d61bb451a483e971aafb3e74f'],
    ['', 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855'],
  ])('of "%s"', (text, digest) => {
    expect(sha256Hex(text)).toBe(digest)
  })
})
