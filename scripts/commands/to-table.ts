/** A table for a terminal: columns as wide as their widest cell; nothing is padded at the end of a line. */
export function toTable(rows: readonly (readonly string[])[]): string {
  const widths = (rows[0] ?? []).map((_, column) => Math.max(...rows.map((cells) => cells[column]?.length ?? 0)))
  const line = (cells: readonly string[]) => cells.map((cell, column) => cell.padEnd(widths[column] ?? 0)).join('  ')
  return rows.map((cells) => `${line(cells).trimEnd()}\n`).join('')
}
