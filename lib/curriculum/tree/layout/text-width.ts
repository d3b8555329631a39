/**
 * Advance widths of Atkinson Hyperlegible Next (regular, tabular figures) in hundredths of an em, measured; letters of about
 * one width together.
 */
const widths: readonly (readonly [letters: string, width: number])[] = [
  ["ijlI ,.'’·:;\u00a0", 28],
  ['frt-()', 39],
  ['cksvxyzJ', 53],
  ['0123456789', 65],
  ['mwMW½', 86],
  ['ADGHNOQUCXRK', 70],
]
const otherwise = 60
/** Bold (640) runs wider by at most this. */
const boldness = 1.09

/** Width in px that a line takes at most, about: nothing that is drawn beside it may begin earlier. */
export function textWidth(text: string, size: number, bold = false): number {
  const ems = [...text].reduce((sum, letter) => {
    const known = widths.find(([letters]) => letters.includes(letter))
    return sum + (known?.[1] ?? otherwise) / 100
  }, 0)
  return Math.ceil(ems * size * (bold ? boldness : 1))
}

/** Breaks a text at its spaces into lines of at most `most` px; a longer word keeps a line of its own. */
export function wrapText(text: string, size: number, most: number, bold = false): string[] {
  const lines: string[] = []
  for (const word of text.split(/ +/).filter(Boolean)) {
    const last = lines.at(-1)
    if (last !== undefined && textWidth(`${last} ${word}`, size, bold) <= most)
      lines[lines.length - 1] = `${last} ${word}`
    else lines.push(word)
  }
  return lines
}
