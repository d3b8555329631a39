import type { RefusalCode } from './contract'

/** Why an item is not taken: what, where in the item, and what to do. */
export interface Refusal {
  readonly code: RefusalCode
  readonly message: string
  readonly field?: string
}

/** A refusal; without `field` it is about the whole item. */
export const refusal = (code: RefusalCode, message: string, field?: string): Refusal =>
  field === undefined ? { code, message } : { code, message, field }
