import type { PairStandard } from '../../curriculum/edition/curriculum'
import type { Shortage, StandingShortfall } from '../shortfall'
import { counted, countWord, listed, ordinal } from './grammar'
import { criterionName, dayName, type Words } from './wording'

/** What wanted attempts must bring: of the whole set (`of` null), or of so many among them. */
interface Quality {
  readonly says: string
  readonly of: number | null
}

function coaches(missing: number, asked: number): Quality[] {
  if (missing <= 0 || (missing >= asked && asked <= 1)) return []
  if (missing >= asked) return [{ says: `seen by ${countWord(asked)} coaches`, of: null }]
  if (missing > 1) return [{ says: `seen by ${countWord(missing)} more coaches`, of: null }]
  return [{ says: `seen by a ${ordinal(asked)} coach`, of: 1 }]
}

function days(missing: number, asked: number): Quality[] {
  if (missing <= 0 || (missing >= asked && asked <= 1)) return []
  if (missing >= asked) return [{ says: `on ${countWord(asked)} days`, of: null }]
  if (missing > 1) return [{ says: `on ${countWord(missing)} more days`, of: null }]
  return [{ says: 'on another day', of: 1 }]
}

function moments(missing: number): Quality[] {
  return missing > 0 ? [{ says: 'with a video moment', of: missing }] : []
}

function asPart({ says, of }: Quality, wanted: number): string {
  if (of === null || wanted === 1) return says
  return of >= wanted ? `each ${says}` : `${countWord(of)} of them ${says}`
}

/** "two clean attempts, one of them seen by a second coach"; null when no attempt is missing by count. */
function attemptsWanted(shortage: Shortage, standard: PairStandard | undefined): string | null {
  const wanted = Math.max(shortage.successes, shortage.coaches, shortage.days, shortage.moments)
  if (wanted === 0) return null
  const attempts = counted(wanted, 'clean attempt')
  const parts = [
    ...coaches(shortage.coaches, standard?.coaches ?? 0),
    ...days(shortage.days, standard?.days ?? 0),
    ...moments(shortage.moments),
  ].map((quality) => asPart(quality, wanted))
  if (parts.length === 0) return attempts
  return `${attempts}${wanted === 1 ? ' ' : ', '}${listed(parts)}`
}

const percent = (share: number): string => `${Math.round(share * 100)} %`

/** Rounded down, so that what falls short never reads as what is asked. */
const percentReached = (share: number): string => `${Math.floor(share * 100)} %`

function certaintyWanted(reached: number, standard: PairStandard | undefined): string {
  const asked = standard?.certainty
  if (!asked) return 'a longer run of clean attempts'
  return `a steadier run (${percentReached(reached)} sure of a clean rate of ${percent(asked.rate)}, where ${percent(asked.at)} is asked)`
}

/** "“hands locked” rated 1 on 26 October where 3 is asked". */
export const sayShortfall = (shortfall: StandingShortfall, words: Words): string =>
  `${criterionName(shortfall.criterion, words)} rated ${shortfall.rating} on ${dayName(shortfall.day, words)} where ${shortfall.expected} is asked`

/** What a standard still wants, as it follows "wants": attempts and what they must bring, criteria to be rated, shortfalls to be mended. */
export function sayShortage(shortage: Shortage, standard: PairStandard | undefined, words: Words): string {
  const attempts = attemptsWanted(shortage, standard)
  const parts = attempts === null ? [] : [attempts]
  if (shortage.certainty !== null) parts.push(certaintyWanted(shortage.certainty, standard))
  if (shortage.unseen.length > 0)
    parts.push(`a rating of ${listed(shortage.unseen.map((key) => criterionName(key, words)))}`)
  if (shortage.standing.length > 0)
    parts.push(`to mend ${listed(shortage.standing.map((shortfall) => sayShortfall(shortfall, words)))}`)
  return parts.length > 0 ? listed(parts) : 'what comes before it'
}
