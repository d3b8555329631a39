import type { PairStandard } from '../../curriculum/edition/curriculum'
import { counted, countWord, listed, sentence } from './grammar'

const percent = (share: number): string => `${Math.round(share * 100)} %`

function successes({ successes, of, coaches, days, moments, withinDays }: PairStandard): string {
  const seen = [
    ...(coaches > 1 ? [`seen by ${counted(coaches, 'coach', 'coaches')}`] : []),
    ...(days > 1 ? [`on ${counted(days, 'day')}`] : []),
    ...(moments > 0 ? [`${countWord(moments)} of them with a video moment`] : []),
  ]
  const among = `${countWord(successes)} of the last ${counted(of, 'called attempt')} ${successes === 1 ? 'succeeds' : 'succeed'}`
  return `${among} within ${counted(withinDays, 'day')}${seen.length > 0 ? `, ${listed(seen)}` : ''}`
}

const slackSaid = (slack: number): string =>
  slack === 0
    ? 'every criterion reaches what the level asks'
    : `the ratings may fall short of what the level asks by ${counted(slack, 'point')} in all, one on a criterion, and never on a critical one`

/** What a standard asks, as sentences: the successes, what a success is, what undoes it, how long it lasts. */
export function sayStandard(standard: PairStandard): string[] {
  const { slack, clean, certainty, validForDays, recheck, recheckWithinDays } = standard
  return [
    successes(standard),
    `a success: ${slackSaid(slack)}`,
    `no critical criterion fell short in the last ${counted(clean, 'attempt')} in which it was rated`,
    ...(certainty
      ? [
          `over the last ${counted(certainty.over, 'called attempt')} it is ${percent(certainty.at)} sure that at least ${percent(certainty.rate)} succeed`,
        ]
      : []),
    `it lasts ${counted(validForDays, 'day')} from the latest success; within ${counted(recheckWithinDays, 'day')} of the lapse ${countWord(recheck.successes)} of the last ${countWord(recheck.of)} ${recheck.successes === 1 ? 'renews' : 'renew'} it`,
  ].map(sentence)
}
