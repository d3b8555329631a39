/**
 * A place inside a document as a JSON Pointer (RFC 6901), e.g. `/skills/3/places/0/level`; the document itself is ''.
 */
export type Pointer = string

/** Steps into a document → its pointer; `~` and `/` inside a step are escaped as RFC 6901 asks. */
export const pointerTo = (...steps: readonly PropertyKey[]): Pointer =>
  steps.map((step) => `/${String(step).replaceAll('~', '~0').replaceAll('/', '~1')}`).join('')

/** A pointer → its steps; the inverse of `pointerTo`, with every step as text. */
export const stepsOf = (pointer: Pointer): string[] =>
  pointer
    .split('/')
    .slice(1)
    .map((step) => step.replaceAll('~1', '/').replaceAll('~0', '~'))
