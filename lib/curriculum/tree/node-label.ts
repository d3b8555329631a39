import type { Skill } from '../model'
import { placeFacts } from '../place'
import type { TreeNode } from './family-graph'
import { textWidth, wrapText } from './layout/text-width'

/** One line of a label: its text, its size in px, and how far its baseline lies under the anchor. */
export interface LabelLine {
  readonly text: string
  readonly size: 13 | 15 | 17
  readonly bold: boolean
  readonly down: number
}

/** What is written beside a node's mark, and the room that mark and text take, in px. */
export interface NodeLabel {
  readonly lines: readonly LabelLine[]
  /** Where the text begins, after the mark. */
  readonly left: number
  readonly width: number
  readonly lead: number
  readonly above: number
  readonly below: number
}

const textLeft = 22
const widest = 108
const leading = { 13: 16, 15: 18, 17: 17 } as const

/** A dive's name without its family, which heads the page: "1½ somersaults, tuck". */
function shortTitle({ title, family, dive }: Skill): string {
  const rest = title.toLowerCase().startsWith(`${family} `) ? title.slice(family.length + 1) : title
  return dive === null ? title : rest.charAt(0).toUpperCase() + rest.slice(1)
}

type Text = Pick<LabelLine, 'text' | 'size' | 'bold'>

function stack(texts: readonly Text[]): NodeLabel {
  const [first] = texts
  const firstDown = first ? Math.round(first.size * 0.36) : 0
  let down = firstDown
  const lines = texts.map((text, index): LabelLine => {
    if (index > 0) down += leading[text.size]
    return { ...text, down }
  })
  const reach = ({ text, size, bold }: Text) => textLeft + textWidth(text, size, bold)
  return {
    lines,
    left: textLeft,
    width: Math.max(textLeft, ...texts.map(reach)),
    lead: first ? reach(first) : textLeft,
    above: 12,
    below: Math.max(12, down + 5),
  }
}

/** A number keeps to what it counts: "1½ twists", "3 m". */
const joined = (text: string): string => text.replace(/([\d½]) /g, '$1\u00a0')

const written = (text: string, size: Text['size'], bold: boolean): Text[] =>
  wrapText(joined(text), size, widest, bold).map((line) => ({ text: line, size, bold }))

/** The label of a node: a dive by its number with its name below, a lead-up by its title, a port with where it comes from. */
export function labelOf({ kind, place, pair, title }: TreeNode): NodeLabel {
  if (kind === 'move') return stack(written(`Move to ${placeFacts[place].label}`, 15, true))
  const dive = pair?.skill.dive ?? null
  if (kind === 'port') {
    const from = pair ? written(`${pair.skill.family} family`, 13, false) : []
    return stack([...written(dive ?? title, 13, dive !== null), ...from])
  }
  if (!pair || dive === null) return stack(written(title, 15, false))
  return stack([{ text: dive, size: 17, bold: true }, ...written(shortTitle(pair.skill), 13, false)])
}
