import type { CheckTally } from '../moment-check'
import type { AnsweredHow } from '../question'
import type { EpochDay } from '../time'
import { counted, countWord, listed, sentence } from './grammar'
import { dayName, type Words } from './wording'

type Today = Pick<Words, 'today'>

/** Who asked whom, and when: "Marguerite Achterberg asked Joel Nakamura-Reed on 12 March." */
export const sayAsked = (by: string, coach: string, day: EpochDay, words: Today): string =>
  sentence(`${by} asked ${by === coach ? 'about an own rating' : coach} on ${dayName(day, words)}`)

/** Who answered in words, and when. */
export const sayAnswered = (by: string, day: EpochDay, words: Today): string =>
  sentence(`${by} answered on ${dayName(day, words)}`)

/** Who corrected what was asked about, and when. */
export const sayCorrected = (by: string, day: EpochDay, words: Today): string =>
  sentence(`${by} rated the dive again on ${dayName(day, words)}`)

const saidWords: Readonly<Record<AnsweredHow, string>> = {
  answered: 'was answered by the coach',
  settled: 'was settled by another look',
  'left open': 'was left open',
}

/** What a decision said of a question: "A question about Fall-in at 1 m was left open." */
export const saySaid = (about: string, how: AnsweredHow): string =>
  sentence(`A question about ${about} ${saidWords[how]}`)

/** What waits under a step: "One question about its evidence stands open, one is answered." Null when nothing does. */
export function sayStanding(answered: number, open: number): string | null {
  if (answered + open === 0) return null
  const parts = [
    ...(open > 0 ? [`${counted(open, 'question')} about its evidence ${open === 1 ? 'stands' : 'stand'} open`] : []),
    ...(answered > 0
      ? [
          open > 0
            ? `${countWord(answered)} ${answered === 1 ? 'is' : 'are'} answered`
            : `${counted(answered, 'question')} about its evidence ${answered === 1 ? 'is' : 'are'} answered`,
        ]
      : []),
  ]
  return sentence(parts.join(', '))
}

/** The moments of some evidence, as the way to them is named: "7 moments, 2 not reachable". */
export function sayMoments({ moments, unreachable }: CheckTally): string {
  const away = unreachable > 0 ? `, ${unreachable} not reachable` : ''
  return `${moments} ${moments === 1 ? 'moment' : 'moments'}${away}`
}

/** How far a head coach has come with them; null before she began. */
export function sayTally({ moments, accepted, questioned, unreachable }: CheckTally): string | null {
  const seen = accepted + questioned
  if (seen + unreachable === 0) return null
  const what = [
    ...(accepted > 0 ? [`accepted ${accepted}`] : []),
    ...(questioned > 0 ? [`questioned ${questioned}`] : []),
  ]
  const of = `Of ${moments} ${moments === 1 ? 'moment' : 'moments'}`
  const you = what.length > 0 ? `${of} you ${listed(what)}` : `${of} you judged none yet`
  const away =
    unreachable > 0 ? `; ${unreachable} ${unreachable === 1 ? 'was' : 'were'} not reachable when looked at` : ''
  return sentence(you + away)
}
