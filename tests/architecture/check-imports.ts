import type { Import } from './imports'
import { type Area, areas, type Package, packages, table } from './table'

/** The area of a path; null for what lies outside all of them. */
export const areaOf = (path: string): Area | null =>
  (Object.keys(areas) as Area[]).find((area) => areas[area].test(path)) ?? null

const packageOf = (specifier: string): Package | null =>
  (Object.keys(packages) as Package[]).find((name) => packages[name].test(specifier)) ?? null

function isAllowed({ from, file, specifier, typeOnly }: Import): boolean {
  const area = areaOf(from)
  if (!area) return false
  const row = table[area]
  if (file === null) {
    const kind = packageOf(specifier)
    return row.packages === 'any' || (kind !== null && row.packages.includes(kind))
  }
  const target = areaOf(file)
  if (!target) return false
  return Boolean(row.all?.includes(target) || (typeOnly && row.types?.includes(target)))
}

/** What the table forbids, a line for each: where, from which area to which. */
export const forbiddenImports = (imports: readonly Import[]): string[] =>
  imports
    .filter((entry) => !isAllowed(entry))
    .map((entry) => {
      const to = entry.file === null ? 'package' : `${areaOf(entry.file)}${entry.typeOnly ? '' : ', not only types'}`
      return `${entry.from}:${entry.line} (${areaOf(entry.from)}) imports ${entry.specifier} (${to})`
    })

/** Kinds of package that the table names and nothing imports: they stand for a part that is not there. */
export function idlePackages(imports: readonly Import[]): Package[] {
  const taken = new Set(imports.flatMap(({ file, specifier }) => (file === null ? [packageOf(specifier)] : [])))
  return (Object.keys(packages) as Package[]).filter((kind) => !taken.has(kind))
}

/** Circles of imports, of types too, each as the files on it. */
export function importCircles(imports: readonly Import[]): string[][] {
  const next = new Map<string, string[]>()
  for (const { from, file } of imports) if (file !== null) next.set(from, [...(next.get(from) ?? []), file])
  const done = new Set<string>()
  const circles: string[][] = []
  const follow = (file: string, way: readonly string[]): void => {
    const at = way.indexOf(file)
    if (at >= 0) circles.push([...way.slice(at), file])
    if (at >= 0 || done.has(file)) return
    for (const target of next.get(file) ?? []) follow(target, [...way, file])
    done.add(file)
  }
  for (const file of next.keys()) follow(file, [])
  return circles
}
