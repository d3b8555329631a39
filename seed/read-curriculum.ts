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

/** The lists of a document that are kept as folders of files, each file a list. */
const lists = {
  skills: withSkillDefaults,
  criteria: withCriterionDefaults,
  faults: withFaultDefaults,
} as const

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

type Fill = (value: unknown) => unknown

const readFolder = (folder: string, withDefaults: Fill): ListReading =>
  isFolder(folder) ? readLists(listYaml(folder).map(readYaml), withDefaults) : { items: [], problems: [] }

function readLists(sources: readonly Source[], withDefaults: Fill): ListReading {
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

const isFolder = (path: string): boolean => statSync(path, { throwIfNoEntry: false })?.isDirectory() ?? false

/** Events stand in a file of their own, for they change with every season; an edition without the file has none. */
function readEvents(path: string): (readonly ['events', ListReading])[] {
  const file = join(path, 'events.yaml')
  if (!statSync(file, { throwIfNoEntry: false })) return []
  return [['events', readLists([readYaml(file)], withEventDefaults)]]
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

/**
 * Reads a folder: `programme.yaml`, lists of skills, criteria and faults in folders of those names, whose files are
 * taken in the order of their names, and `events.yaml` where there is one. An author may leave out what follows from a dive number or is the usual thing.
 */
export function readCurriculumFolder(path: string): CurriculumReading {
  const programme = readYaml(join(path, 'programme.yaml'))
  const folders = Object.entries(lists).map(([name, fill]) => [name, readFolder(join(path, name), fill)] as const)
  const read = [...folders, ...readEvents(path)]
  const problems = [...programme.problems, ...read.flatMap(([, list]) => list.problems)]
  const placeOf = (pointer: Pointer): string => {
    const [name, index, ...rest] = stepsOf(pointer)
    const item = read.find(([list]) => list === name)?.[1].items[Number(index)]
    return item ? item.source.placeOf(item.pointer + pointerTo(...rest)) : programme.placeOf(pointer)
  }
  if (problems.length > 0) return { document: null, problems, placeOf }
  if (typeof programme.value !== 'object' || programme.value === null || Array.isArray(programme.value))
    return refusal(
      `${programme.file}:1`,
      'programme.yaml holds one object: title, levels, standard, boardMoves, layOff',
    )
  const values = read.map(([name, list]) => [name, list.items.map((item) => item.value)] as const)
  return check({ ...programme.value, ...Object.fromEntries(values) }, placeOf)
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
