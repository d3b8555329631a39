import type { KeyboardEvent } from 'react'

/**
 * Whether Enter held down on a button is about to press it once more, which nobody means: it would mark again and again. Those
 * that move by a little say `data-moves-on`.
 */
export const pressesOnce = ({ key, repeat, target }: KeyboardEvent): boolean =>
  repeat && key === 'Enter' && target instanceof HTMLButtonElement && target.dataset.movesOn === undefined
