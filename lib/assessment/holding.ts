import type { Curriculum, PairKey } from '../curriculum/edition/curriculum'
import { asOf } from './as-of'
import { ownDoubts } from './doubt'
import { fallenBelow } from './fallen'
import { historyOf, type PairHistory } from './history'
import { bestOf, type HoldingState, noHolding, type SignedState, stateOf } from './holding-state'
import type { DiverRecord, SignOffFact } from './record'
import { type Below, restingOf } from './rests-on'
import type { Doubt } from './shortfall'
import { listSigned, type Signed } from './signed'
import type { AsOf } from './time'
import { type Above, type Refresh, type Validity, validityOf } from './validity'

/** The holdings of one diver on one date. */
export interface Holdings {
  readonly of: (pair: PairKey) => HoldingState
  /** Pairs at which anything was ever signed or recognised. */
  readonly pairs: readonly PairKey[]
  readonly restsOn: (pair: PairKey) => Below
  readonly ground: Ground
}

/** What the signed facts alone give: the first pass, which depends on no attempt. */
export interface Ground {
  readonly signed: ReadonlyMap<PairKey, readonly Signed[]>
  readonly restsOn: (pair: PairKey) => Below
  readonly above: ReturnType<typeof whatRests>
}

/**
 * The ground of a record with more sign-offs than the one of `ground`. Where each is at a pair that was signed as high
 * before, nothing rests on anything new, and only the list of what was signed is longer.
 */
export function groundWith(
  ground: Ground,
  curriculum: Curriculum,
  record: DiverRecord,
  signOffs: readonly SignOffFact[],
): Ground {
  const isCovered = ({ pair, level }: SignOffFact): boolean =>
    ground.signed.get(pair)?.some((one) => !one.revoked && one.level >= curriculum.levelIndex(level)) ?? false
  if (signOffs.length === 0) return ground
  return signOffs.every(isCovered)
    ? { ...ground, signed: byPair(listSigned(curriculum, record)) }
    : groundOf(curriculum, record)
}

function groundOf(curriculum: Curriculum, record: DiverRecord): Ground {
  const signed = byPair(listSigned(curriculum, record))
  const restsOn = restingOf(curriculum, record, signed)
  return { signed, restsOn, above: whatRests(signed, restsOn) }
}

interface Own {
  readonly signed: Signed
  readonly doubts: readonly Doubt[]
  readonly validity: Validity
}

/**
 * Reads the holdings of a diver. Three passes that never meet in a circle: what rests on what follows from the signed
 * facts alone; validity is worked out from above (a success refreshes what it rests on); doubts come from below. `ground`
 * is that of a record with the same signed facts, where there is one.
 */
export function readHoldings(
  curriculum: Curriculum,
  record: DiverRecord,
  history: (pair: PairKey) => PairHistory | undefined,
  date: AsOf,
  ground: Ground = groundOf(curriculum, record),
): Holdings {
  const { signed, restsOn, above } = ground
  const owns = new Map<PairKey, readonly Own[]>()
  const aboves = new Map<string, Above>()
  const states = new Map<PairKey, HoldingState>()

  /** A circle of prerequisites is a draft's mistake; the pair that closes it adds nothing. */
  const ownOf = (pair: PairKey): readonly Own[] => {
    const known = owns.get(pair)
    if (known) return known
    owns.set(pair, [])
    const read = history(pair)
    const found = read ? (signed.get(pair) ?? []).map((one) => readOwn(read, one)) : []
    owns.set(pair, found)
    return found
  }
  const readOwn = (read: PairHistory, one: Signed): Own => {
    const doubts = ownDoubts(read, one)
    const leadUp = read.pair.skill.dive === null
    return { signed: one, doubts: doubts.open, validity: validityOf(read, one, doubts, aboveOf(one, leadUp)) }
  }
  const aboveOf = (one: Signed, leadUp: boolean): Above => {
    const name = `${one.pair} ${one.level}`
    const known = aboves.get(name)
    if (known) return known
    const resting = (above.get(one.pair) ?? []).filter(({ level }) => one.level >= level)
    const live = resting.flatMap(({ pair }) => ownOf(pair).filter((own) => !own.signed.revoked))
    const isDive = (pair: PairKey) => curriculum.pairs.get(pair)?.skill.dive != null
    const found = {
      successes: distinct(live.flatMap(({ validity }) => validity.successes)),
      protections: live
        .filter((own) => leadUp && isDive(own.signed.pair))
        .map((own) => ({ from: own.signed.day, until: own.validity.until })),
    }
    aboves.set(name, found)
    return found
  }
  const stateAt = (own: Own, below: readonly Doubt[]): SignedState => {
    const { until, shown } = own.validity
    const doubts = own.signed.revoked ? [] : [...own.doubts, ...below]
    const lasts = curriculum.pairs.get(own.signed.pair)?.standard.recheckWithinDays ?? 0
    const lapsed = until < date.day
    const state = own.signed.revoked ? 'revoked' : lapsed ? 'lapsed' : doubts.length > 0 ? 'in doubt' : 'current'
    return { ...own.signed, state, shown, validUntil: until, renewBy: until + lasts, doubts }
  }
  const of = (pair: PairKey): HoldingState => {
    const known = states.get(pair)
    if (known) return known
    const own = ownOf(pair)
    const withBelow = (below: readonly Doubt[]): HoldingState => {
      const all = own.map((one) => stateAt(one, below))
      const by = bestOf(all)
      return by ? { state: stateOf(by), by, all } : noHolding
    }
    states.set(pair, withBelow([]))
    const prerequisite = curriculum.pairs.get(pair)?.prerequisite
    const holding = own.length > 0 && prerequisite ? withBelow(fallen(prerequisite)) : withBelow([])
    states.set(pair, holding)
    return holding
  }
  const fallen = fallenBelow(curriculum, record, signed, of)
  return { of, pairs: [...signed.keys()], restsOn, ground }
}

function byPair(all: readonly Signed[]): ReadonlyMap<PairKey, readonly Signed[]> {
  const groups = new Map<PairKey, Signed[]>()
  for (const one of all) groups.set(one.pair, [...(groups.get(one.pair) ?? []), one])
  return groups
}

/** A dive refreshes once, however many sign-offs it keeps alive. */
const distinct = (successes: readonly Refresh[]): Refresh[] => [
  ...new Map(successes.map((one) => [one.at, one])).values(),
]

/** For each pair, those with something unrevoked that rest on it, and from which level index on. */
function whatRests(
  signed: ReadonlyMap<PairKey, readonly Signed[]>,
  restsOn: (pair: PairKey) => Below,
): ReadonlyMap<PairKey, readonly { readonly pair: PairKey; readonly level: number }[]> {
  const above = new Map<PairKey, { pair: PairKey; level: number }[]>()
  for (const [pair, all] of signed) {
    if (all.every((one) => one.revoked)) continue
    for (const [below, level] of restsOn(pair)) {
      const list = above.get(below) ?? []
      list.push({ pair, level })
      above.set(below, list)
    }
  }
  return above
}

/** The holdings of a diver on `date`, by pair; a pair that is absent was never signed or recognised. */
export function holdings(curriculum: Curriculum, record: DiverRecord, date: AsOf): ReadonlyMap<PairKey, HoldingState> {
  const known = asOf(record, date)
  const histories = new Map(
    [...curriculum.pairs.values()].map((pair) => [pair.key, historyOf(pair, known.attempts, date)] as const),
  )
  const read = readHoldings(curriculum, known, (pair) => histories.get(pair), date)
  return new Map(read.pairs.map((pair) => [pair, read.of(pair)]))
}
