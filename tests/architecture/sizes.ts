import ts from 'typescript'
import { lineOf, parse, type Source, visit } from './sources'

export const lineCount = ({ text }: Source): number => text.trimEnd().split('\n').length

/** The value below which the fraction `of` of the numbers lies, by nearest rank. */
export function quantile(numbers: readonly number[], of: number): number {
  const sorted = [...numbers].sort((a, b) => a - b)
  return sorted[Math.max(0, Math.ceil(of * sorted.length) - 1)] ?? 0
}

/** Nothing but constants and types: a table, whose length is its subject's. */
export function isDataTable(source: Source): boolean {
  let hasCode = false
  visit(parse(source), (node) => {
    if (ts.isFunctionLike(node) || ts.isClassDeclaration(node) || ts.isIfStatement(node)) hasCode = true
  })
  return !hasCode
}

/** Sources longer than `most` lines that are not data tables. */
export const tooLong = (sources: readonly Source[], most: number): string[] =>
  sources
    .filter((source) => lineCount(source) > most && !isDataTable(source))
    .map((source) => `${source.path}: ${lineCount(source)} lines`)

/** Functions exported by a source that are longer than `most` lines. */
export function longFunctions(source: Source, most: number): string[] {
  const file = parse(source)
  return file.statements.filter(ts.isFunctionDeclaration).flatMap((declaration) => {
    const lines = file.getLineAndCharacterOfPosition(declaration.end).line + 2 - lineOf(file, declaration)
    return lines > most ? [`${source.path}: ${declaration.name?.text} has ${lines} lines`] : []
  })
}
