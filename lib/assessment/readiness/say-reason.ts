import { type Pair, pairKey } from '../../curriculum/edition/curriculum'
import type { Requirement } from '../../curriculum/requirement/model'
import type { StandingShortfall } from '../shortfall'
import type { Finding, Reason } from './finding'
import { counted, countWord, listed, midSentence, sentence } from './grammar'
import { sayDiveList } from './say-dive-list'
import { doubtBecause } from './say-doubt'
import { sayAgeAsked, sayFeature } from './say-requirement'
import { sayShortage, sayShortfall } from './say-shortage'
import { criterionName, dayName, levelName, pairName, stepName, type Words } from './wording'

type Code = Reason['code']
type Says<C extends Code> = (reason: Extract<Reason, { code: C }>, node: Requirement, words: Words) => string

const subject = (node: Requirement, words: Words): string =>
  node.kind === 'signOff' ? pairName(pairKey(node), words) : 'it'

const pairOf = (node: Requirement, words: Words): Pair | undefined =>
  node.kind === 'signOff' ? words.curriculum.pairs.get(pairKey(node)) : undefined

/** "“entry line” in forward dive, tuck at 1 m"; over many pairs the criterion alone, since the sentence names the count. */
function criterionIn(criterion: string, node: Requirement, words: Words): string {
  const name = criterionName(criterion, words)
  if (node.kind !== 'criterion' || node.at.length > 3) return name
  return `${name} in ${listed(
    node.at.map((at) => midSentence(pairName(pairKey(at), words))),
    'or',
  )}`
}

const ratingAsked = (node: Requirement): string => (node.kind === 'criterion' ? String(node.rating) : 'what is asked')

const held = (recognised: boolean, byOverride: boolean): string =>
  `${recognised ? 'is recognised' : 'is signed'}${byOverride ? ' by override' : ''}`

const heldBack = (shortfall: StandingShortfall, clean: number | undefined, words: Words): string => {
  const until = clean === undefined || clean <= 1 ? 'the last attempt' : `the last ${countWord(clean)} attempts`
  return `is held back by ${sayShortfall(shortfall, words)}; ${until} that rate it must reach ${shortfall.expected}`
}

/** A count before "of". */
const countOf = (count: number): string => (count === 0 ? 'none' : countWord(count))

const ageWanted = (node: Requirement): string => (node.kind === 'age' ? sayAgeAsked(node) : 'another age is asked')

/** One entry a code: a code added to the union does not compile until it is said here. */
const says: { readonly [C in Code]: Says<C> } = {
  branch: ({ met, wanted, outOf }) => {
    const counts =
      outOf === 1
        ? `${countOf(met)} of one condition is met`
        : `${countOf(met)} of ${counted(outOf, 'condition')} ${met <= 1 ? 'is' : 'are'} met`
    return met >= wanted
      ? counts
      : `${counts}; ${wanted === outOf ? 'all are' : wanted === 1 ? 'one is' : `${countWord(wanted)} are`} asked`
  },
  signed: (reason, node, words) => {
    const until = reason.validUntil === null ? '' : `, valid until ${dayName(reason.validUntil, words)}`
    return `${subject(node, words)} ${held(reason.recognised, reason.byOverride)} at ${levelName(reason.level, words)} since ${dayName(reason.day, words)}${until}`
  },
  lapsed: ({ day, renewBy }, node, words) =>
    `${subject(node, words)} lapsed on ${dayName(day, words)}; a recheck renews it until ${dayName(renewBy, words)}`,
  'in doubt': ({ doubt }, node, words) => `${subject(node, words)} is in doubt: ${doubtBecause(doubt, words)}`,
  'recognised, not shown': ({ day, lapses }, node, words) =>
    `${subject(node, words)} is recognised since ${dayName(day, words)} and not shown here yet; the recognition lapses on ${dayName(lapses, words)}`,
  'to sign': ({ level }, node, words) =>
    `${subject(node, words)} has reached the standard of ${levelName(level, words)} and waits to be signed`,
  'waits for what it rests on': ({ level }, node, words) =>
    `${subject(node, words)} has reached the standard of ${levelName(level, words)} and waits for what it rests on`,
  'not enough': ({ level, shortage, signedAt }, node, words) => {
    const wants = sayShortage(shortage, pairOf(node, words)?.standard, words)
    return signedAt === null
      ? `${subject(node, words)} still wants ${wants}`
      : `${subject(node, words)} is signed at ${levelName(signedAt, words)} and still wants ${wants} at ${levelName(level, words)}`
  },
  failing: ({ level, failed, of }, node, words) =>
    `${subject(node, words)} is not there yet: ${countWord(failed)} of the last ${counted(of, 'called attempt')} fell short of ${levelName(level, words)}`,
  'standing shortfall': ({ shortfall }, node, words) =>
    `${subject(node, words)} ${heldBack(shortfall, pairOf(node, words)?.standard.clean, words)}`,
  rated: ({ criterion, reached, of }, node, words) =>
    `${criterionIn(criterion, node, words)} reached ${ratingAsked(node)} in ${countWord(reached)} of the last ${counted(of, 'called attempt')}`,
  'rated too seldom': ({ criterion, reached, times, of }, node, words) =>
    `${criterionIn(criterion, node, words)} has reached ${ratingAsked(node)} in ${counted(reached, 'called attempt')}; ${countWord(times)} of the last ${countWord(of)} ${times === 1 ? 'is' : 'are'} asked`,
  'fell short': ({ criterion, fell, of, rating }, node, words) =>
    `${criterionIn(criterion, node, words)} fell short of ${rating} in ${countWord(fell)} of the last ${counted(of, 'called attempt')}`,
  'criterion shortfall': ({ shortfall }, node, words) =>
    `${criterionIn(shortfall.criterion, node, words)} is not sound yet: rated ${shortfall.rating} on ${dayName(shortfall.day, words)} where ${shortfall.expected} is asked`,
  approved: ({ target, day, byOverride, recognised }, _node, words) =>
    `${stepName(target, words)} ${recognised ? 'is recognised' : 'was approved'}${byOverride ? ' by override' : ''} ${recognised ? 'since' : 'on'} ${dayName(day, words)}`,
  'to review': ({ target, day }, _node, words) =>
    `${stepName(target, words)}, approved on ${dayName(day, words)}, is to be reviewed: what it rests on no longer holds`,
  'not approved': ({ target }, _node, words) => `${stepName(target, words)} is not approved yet`,
  'recognised, not shown here': ({ target }, _node, words) =>
    `${stepName(target, words)} is recognised, and what it rests on is not shown here yet`,
  withdrawn: ({ target, day }, _node, words) => `${stepName(target, words)} was withdrawn on ${dayName(day, words)}`,
  'of age': ({ age }, node) => `age ${age} is inside the limits: ${ageWanted(node)}`,
  'age waived': ({ age }, node) =>
    `${ageWanted(node)}; ${age === null ? 'it' : `at age ${age} it`} is waived by override`,
  'no birth date': (_reason, node) => `no birth date is recorded: ${ageWanted(node)}`,
  'too young': ({ age, min, from }, _node, words) =>
    `age ${age} is too young: at least ${min} is asked, which comes on ${dayName(from, words)}`,
  'too old': ({ age, max }) => `age ${age} is too old: at most ${max} is asked`,
  'legal list': ({ event, answer }, _node, words) => sayDiveList(event, answer, words),
  'list to renew': ({ event, answer }, _node, words) => sayDiveList(event, answer, words),
  'no legal list': ({ event, answer }, _node, words) => sayDiveList(event, answer, words),
  'venue has it': ({ feature }) => `the club has ${sayFeature(feature)}`,
  'venue unknown': ({ feature }) => `it is not recorded whether the club has ${sayFeature(feature)}`,
  'venue lacks it': ({ feature }) => `the club does not have ${sayFeature(feature)}`,
  'not in this edition': ({ what }) => `“${what}” is not in this edition of the curriculum, so nobody can meet it`,
}

/** The reason of a finding's own node (not of its children) as one sentence that names its subject. */
export function sayReason({ node, reason }: Pick<Finding, 'node' | 'reason'>, words: Words): string {
  // A reason and its entry always match; TypeScript cannot see that correlation through an index.
  const say = says[reason.code] as (reason: Reason, node: Requirement, words: Words) => string
  return sentence(say(reason, node, words))
}
