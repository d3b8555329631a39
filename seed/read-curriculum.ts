import { readdirSync, statSync } from 'node:fs'
import { join } from 'node:path'
import type { Pointer } from '../lib/curriculum/edition/pointer'
import { pointerTo, stepsOf } from '../lib/curriculum/edition/pointer'
import { readEdition } from '../lib/curriculum/edition/publish'
import type { EditionDocument } from '../lib/curriculum/model'
import { withCriterionDefaults, withEventDefaults, withFaultDefaults, withSkillDefaults } from './curriculum-defaults'
import type { Source, SourceProblem } from './curriculum-source'
import { readJson, readYaml } from './curriculum-source'

/** A curriculum read from files: the document, or what is wrong and where. */
export interface CurriculumReading {
  /** Null when there are problems. */
  readonly document: EditionDocument | null
  readonly problems: readonly SourceProblem[]
  /** `file:line` of a JSON Pointer into the document. */
  readonly placeOf: (pointer: Pointer) => string
}

/** A list that is kept in a file of its own, in a folder of files, each of them a list, or as a whole in programme.yaml. */
interface ListFiles {
  /** The folder or file, beside programme.yaml. */
  readonly at: string
  readonly withDefaults: (value: unknown) => unknown
}

const asWritten = (value: unknown): unknown => value

const lists: Readonly<Record<string, ListFiles>> = {
  levels: { at: 'levels', withDefaults: asWritten },
  skills: { at: 'skills', withDefaults: withSkillDefaults },
  criteria: { at: 'criteria', withDefaults: withCriterionDefaults },
  faults: { at: 'faults', withDefaults: withFaultDefaults },
  boardMoves: { at: 'board-moves', withDefaults: asWritten },
  events: { at: 'events.yaml', withDefaults: withEventDefaults },
}

/** An item of a list, with the file it was written in and its place there. */
interface Item {
  readonly value: unknown
  readonly source: Source
  readonly pointer: Pointer
}

interface ListReading {
  readonly items: readonly Item[]
  readonly problems: readonly SourceProblem[]
}

const byNumber = new Intl.Collator('en', { numeric: true })

const listYaml = (folder: string): string[] =>
  readdirSync(folder)
    .filter((name) => /\.ya?ml$/.test(name))
    .sort(byNumber.compare)
    .map((name) => join(folder, name))

/** Null when there is neither such a folder nor such a file. */
function readList(path: string, withDefaults: ListFiles['withDefaults']): ListReading | null {
  const stat = statSync(path, { throwIfNoEntry: false })
  if (!stat) return null
  const sources = (stat.isDirectory() ? listYaml(path) : [path]).map(readYaml)
  const notLists = sources.filter(({ value, problems }) => problems.length === 0 && !Array.isArray(value))
  return {
    items: sources.flatMap((source) =>
      Array.isArray(source.value)
        ? source.value.map((value, index) => ({ value: withDefaults(value), source, pointer: pointerTo(index) }))
        : [],
    ),
    problems: [
      ...sources.flatMap((source) => source.problems),
      ...notLists.map(({ file }) => ({
        place: `${file}:1`,
        message: 'the file holds a list: begin each item with "- "',
      })),
    ],
  }
}

const refusal = (place: string, message: string): CurriculumReading => ({
  document: null,
  problems: [{ place, message }],
  placeOf: () => place,
})

function check(value: unknown, placeOf: CurriculumReading['placeOf']): CurriculumReading {
  const reading = readEdition(value)
  if (reading.ok) return { document: reading.document, problems: [], placeOf }
  const problems = reading.problems.map(({ path, message }) => ({
    place: placeOf(path),
    message: `${path || '/'}: ${message}`,
  }))
  return { document: null, problems, placeOf }
}

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

/** Lists that stand in files of their own and in programme.yaml as well: one of the two would be ignored. */
function writtenTwice(programme: Source, names: readonly string[]): SourceProblem[] {
  const { value } = programme
  return names
    .filter((name) => isObject(value) && Object.hasOwn(value, name))
    .map((name) => ({
      place: programme.placeOf(pointerTo(name)),
      message: `${name} stand here and in ${lists[name]?.at}; keep one of the two`,
    }))
}

/**
 * Reads a folder: `programme.yaml`; levels, skills, criteria, faults and board moves in folders of those names, whose files
 * are taken in the order of their names; and `events.yaml`. What has no files may stand in programme.yaml. An author may
 * leave out what follows from a dive number or is the usual thing.
 */
export function readCurriculumFolder(path: string): CurriculumReading {
  const programme = readYaml(join(path, 'programme.yaml'))
  const read = Object.entries(lists).flatMap(([name, { at, withDefaults }]) => {
    const list = readList(join(path, at), withDefaults)
    return list ? [[name, list] as const] : []
  })
  const names = read.map(([name]) => name)
  const problems = [
    ...programme.problems,
    ...read.flatMap(([, list]) => list.problems),
    ...writtenTwice(programme, names),
  ]
  const placeOf = (pointer: Pointer): string => {
    const [name, index, ...rest] = stepsOf(pointer)
    const item = read.find(([list]) => list === name)?.[1].items[Number(index)]
    return item ? item.source.placeOf(item.pointer + pointerTo(...rest)) : programme.placeOf(pointer)
  }
  if (problems.length > 0) return { document: null, problems, placeOf }
  if (!isObject(programme.value))
    return refusal(
      `${programme.file}:1`,
      'programme.yaml holds one object: title, standard, layOff, and the lists that have no files',
    )
  const values = read.map(([name, list]) => [name, list.items.map((item) => item.value)] as const)
  return check({ skills: [], criteria: [], faults: [], ...programme.value, ...Object.fromEntries(values) }, placeOf)
}

/** Reads a folder of YAML files, or one JSON file that holds a whole document with nothing left out. */
export function readCurriculum(path: string): CurriculumReading {
  const stat = statSync(path, { throwIfNoEntry: false })
  if (!stat) return refusal(`${path}:1`, 'there is no such file or folder')
  if (stat.isDirectory()) return readCurriculumFolder(path)
  const source = readJson(path)
  if (source.problems.length > 0) return { document: null, problems: source.problems, placeOf: source.placeOf }
  return check(source.value, source.placeOf)
}
