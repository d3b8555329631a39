import type { CSSProperties } from 'react'
import type { GuideView } from '../[pair]/loader'

const few = 4

/** The grid of a guide's levels; few of them leave more room for what is stated of all. */
export const gridOf = ({ stages }: GuideView): string => (stages.length <= few ? 'guide-grid guide-few' : 'guide-grid')

/** How many columns it has. */
export const levelsOf = ({ stages }: GuideView) => ({ '--guide-levels': stages.length }) as CSSProperties

/** The columns of the levels by index, both inclusive. */
export const acrossLevels = (from: number, until: number) =>
  ({ '--guide-from': from + 1, '--guide-span': until - from + 1 }) as CSSProperties
