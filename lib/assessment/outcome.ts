/** What a rule says no with: a code of its own closed set, a sentence that says what to do, and the field it belongs to. */
export interface Refused {
  readonly code: string
  readonly message: string
  readonly field?: string
}

/** The id of what was kept, or why nothing was. */
export type Outcome = { readonly ok: true; readonly id: string } | { readonly ok: false; readonly refusal: Refused }

/** A refusal; `field` names the form field that it belongs to. */
export const refuse = (
  code: string,
  message: string,
  field?: string,
): { readonly ok: false; readonly refusal: Refused } => ({
  ok: false,
  refusal: field === undefined ? { code, message } : { code, message, field },
})
