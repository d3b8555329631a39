/** What a cell of an export holds. */
export type CsvCell = string | number

/**
 * A spreadsheet takes a cell that begins so for a formula, which could send what stands beside it elsewhere; an apostrophe
 * before it makes it text (OWASP, CSV Injection: = + - @, tab and carriage return; the line feed and the wide forms besides).
 */
const formula = /^[=+\-@\t\r\n＝＋－＠]/

function written(cell: CsvCell): string {
  if (typeof cell === 'number') return String(cell)
  const safe = formula.test(cell) ? `'${cell}` : cell
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe
}

/**
 * Rows as comma-separated values (RFC 4180): CRLF after each row, quotation marks where a cell needs them, doubled inside.
 * Numbers are written as they are; text that could be taken for a formula is made text.
 */
export const writeCsv = (rows: readonly (readonly CsvCell[])[]): string =>
  rows.map((row) => `${row.map(written).join(',')}\r\n`).join('')
