import { readFileSync } from 'node:fs'
import { type Document, isNode, LineCounter, parseDocument } from 'yaml'
import type { Pointer } from '../lib/curriculum/edition/pointer'
import { stepsOf } from '../lib/curriculum/edition/pointer'

/** What is wrong in a file, and where: `place` is `file:line`. */
export interface SourceProblem {
  readonly place: string
  readonly message: string
}

/** One file of a curriculum, read: its value, what is wrong with its text, and the line of each place in it. */
export interface Source {
  readonly file: string
  readonly value: unknown
  readonly problems: readonly SourceProblem[]
  /** `file:line` of the value at a pointer into the file, or of the nearest written one above it. */
  readonly placeOf: (pointer: Pointer) => string
}

function lineFinder(file: string, document: Document.Parsed, lines: LineCounter): Source['placeOf'] {
  return (pointer) => {
    const steps = stepsOf(pointer)
    for (let depth = steps.length; depth >= 0; depth--) {
      const node: unknown = depth === 0 ? document.contents : document.getIn(steps.slice(0, depth), true)
      if (isNode(node) && node.range) return `${file}:${lines.linePos(node.range[0]).line}`
    }
    return `${file}:1`
  }
}

function parseText(file: string, text: string): Source {
  const lines = new LineCounter()
  const document = parseDocument(text, { lineCounter: lines, prettyErrors: false })
  const problems = document.errors.map((error) => ({
    place: `${file}:${lines.linePos(error.pos[0]).line}`,
    message: `this is not YAML that can be read: ${error.message}`,
  }))
  const value: unknown = problems.length === 0 ? document.toJS() : null
  return { file, value, problems, placeOf: lineFinder(file, document, lines) }
}

/** The line of the character at which JSON.parse gave up, from its message; the last line when the text just ends. */
function jsonErrorLine(text: string, message: string): number {
  const position = /position (\d+)/.exec(message)?.[1]
  return text.slice(0, position === undefined ? text.length : Number(position)).split('\n').length
}

const unreadable = (file: string, place: string, message: string): Source => ({
  file,
  value: null,
  problems: [{ place, message }],
  placeOf: () => `${file}:1`,
})

function readText(file: string): string | Source {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(readFileSync(file))
  } catch (error) {
    const why =
      error instanceof TypeError ? 'it is not UTF-8 text' : String(error instanceof Error ? error.message : error)
    return unreadable(file, `${file}:1`, `the file cannot be read: ${why}`)
  }
}

/** Reads a YAML file. */
export function readYaml(file: string): Source {
  const text = readText(file)
  return typeof text === 'string' ? parseText(file, text) : text
}

/** Reads a JSON file strictly; a key that stands twice in one object is a problem. */
export function readJson(file: string): Source {
  const text = readText(file)
  if (typeof text !== 'string') return text
  try {
    const value: unknown = JSON.parse(text)
    // JSON is YAML as well, and the YAML reader knows the lines.
    const lined = parseText(file, text)
    return { ...lined, value, problems: lined.problems.filter((problem) => problem.message.includes('unique')) }
  } catch (error) {
    if (!(error instanceof SyntaxError)) throw error
    const line = jsonErrorLine(text, error.message)
    return unreadable(file, `${file}:${line}`, `this is not JSON that can be read: ${error.message}`)
  }
}
