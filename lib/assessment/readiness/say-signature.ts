import type { SignedState } from '../holding-state'
import type { SignatureEvent } from '../signature-history'
import { counted, sentence } from './grammar'
import { dayName, type Words } from './wording'

type Kind = SignatureEvent['kind']

/** One entry a kind: an event added to the union does not compile until it is said here. */
const says: { readonly [K in Kind]: (event: SignatureEvent & { kind: K }, words: Words) => string } = {
  'kept by dives': ({ dives, day }, words) =>
    `${counted(dives, 'clean attempt')} since, the last on ${dayName(day, words)}`,
  doubted: ({ day, until }, words) =>
    until === null
      ? `in doubt since ${dayName(day, words)}`
      : `in doubt from ${dayName(day, words)}; cleared by the recheck on ${dayName(until, words)}`,
  shown: ({ day }, words) => `shown here on ${dayName(day, words)}`,
  'not shown': () => 'not shown here yet: it opens what rests on it for training, and advances nothing',
  'lapses soon': ({ day }, words) => `lapses after ${dayName(day, words)} unless one clean attempt renews it`,
  lapsed: ({ day, renewBy }, words) =>
    renewBy < words.today
      ? `lapsed on ${dayName(day, words)}: the full standard is asked again`
      : `lapsed on ${dayName(day, words)}: the recheck renews it until ${dayName(renewBy, words)}`,
}

/** What happened to something signed, as one sentence. */
export function saySignatureEvent(event: SignatureEvent, words: Words): string {
  // An event and its entry always match; TypeScript cannot see that correlation through an index.
  const say = says[event.kind] as (event: SignatureEvent, words: Words) => string
  return sentence(say(event, words))
}

/** How it was given: by a signature, by the recheck, by override, or recognised from before. */
export function saySigned(
  { kind, level, byOverride, day }: SignedState,
  by: { readonly name: string; readonly recheck: boolean },
  words: Words,
): string {
  const title = words.curriculum.levels[level]?.title ?? 'an earlier level'
  const verb =
    kind === 'recognition'
      ? 'recognised'
      : byOverride
        ? 'signed by override'
        : by.recheck
          ? 'renewed by the recheck'
          : 'signed'
  return sentence(`${verb} at ${title} on ${dayName(day, words)} by ${by.name}`)
}

/** The state of something signed as the margin says it. */
export const signedWord = ({ state, shown }: SignedState): string =>
  state === 'current' && !shown ? 'recognised' : state
