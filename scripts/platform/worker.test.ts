import fs from 'node:fs'
import { describe, expect, it } from 'vitest'
import { fillWorker } from './worker.mjs'

const template = fs.readFileSync('sw/sw.template.js', 'utf8')
const file = (url: string, text: string) => ({ url, bytes: Buffer.from(text) })
const one = [file('/_next/static/chunks/$&__a.js', 'a'), file('/_next/static/media/b.woff2', 'b')]
const versionOf = (worker: string) => /const version = "([0-9a-f]{16})"/.exec(worker)?.[1]

describe('the worker', () => {
  it('names the files of the build', () => {
    expect(fillWorker(template, 'one', one)).toContain(
      'const files = ["/_next/static/chunks/$&__a.js","/_next/static/media/b.woff2"]',
    )
  })

  it('has another version when anything it hands out has changed, and the same when nothing has', () => {
    const version = versionOf(fillWorker(template, 'one', one))
    expect(version).toBeTruthy()
    expect(versionOf(fillWorker(template, 'one', one))).toBe(version)
    const others = [
      fillWorker(template, 'two', one),
      fillWorker(`${template}\n`, 'one', one),
      fillWorker(template, 'one', [file('/_next/static/chunks/$&__a.js', 'c')]),
      fillWorker(template, 'one', [file('/_next/static/chunks/d.js', 'a')]),
    ]
    expect(new Set([version, ...others.map(versionOf)]).size).toBe(5)
  })

  it('is not made from a template without its places', () => {
    expect(() => fillWorker('const version = 1', 'one', one)).toThrow("'__VERSION__'")
  })
})
