/** Why a text is no dive number, or why a dive cannot be done at a height. A closed union; the sentence says it in full. */
export const diveErrorCodes = [
  'empty',
  'not a dive number',
  'unknown group',
  'digit count',
  'no position',
  'unknown position',
  'flying digit',
  'unknown direction',
  'somersaults',
  'twists',
  'flying',
  'free without twist',
  'twist position',
  'platform only',
  'not possible',
  'beyond the tables',
] as const
export type DiveErrorCode = (typeof diveErrorCodes)[number]

/** A refusal that can be shown as it is: `message` says what is wrong and what to do, `text` is the dive as it was given. */
export interface DiveError {
  readonly code: DiveErrorCode
  readonly message: string
  readonly text: string
}

/** What a check answers before it knows the text it speaks of. */
export type Refusal = Omit<DiveError, 'text'>

/** Makes a refusal; the message is a sentence without its full stop. */
export const refuse = (code: DiveErrorCode, message: string): Refusal => ({ code, message })
