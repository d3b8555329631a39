import type { Row, Rows } from '../../seed/demo/prepared/file'

/** Columns by table. */
export type Columns = Readonly<Record<string, readonly string[]>>

/** What chance makes: an id, a digest or commitment, a salt. */
const token = /\b(?:[0-9a-f]{8}-(?:[0-9a-f]{4}-){3}[0-9a-f]{12}|[0-9a-f]{64}|[0-9a-f]{32})\b/g

const tokensIn = (text: string): string[] => text.match(token) ?? []

/** The part of a row that chance may have made, and the rest, as text. */
function halves(row: Row, free: readonly string[]): { readonly free: string; readonly fixed: string } {
  const part = (isFree: boolean) =>
    JSON.stringify(
      Object.entries(row)
        .filter(([column]) => free.includes(column) === isFree)
        .sort(([a], [b]) => (a < b ? -1 : 1)),
    )
  return { free: part(true), fixed: part(false) }
}

interface Waiting {
  readonly row: Row
  readonly free: string
  readonly fixed: string
}

type Side = ReadonlyMap<string, Waiting[]>

const sideOf = (rows: Rows, free: Columns): Side =>
  new Map([...rows].map(([table, list]) => [table, list.map((row) => ({ row, ...halves(row, free[table] ?? []) }))]))

const allTokens = (side: Side): Set<string> =>
  new Set([...side.values()].flatMap((list) => list.flatMap(({ free }) => tokensIn(free))))

function groupBy(list: readonly Waiting[], shape: (one: Waiting) => string): Map<string, Waiting[]> {
  const groups = new Map<string, Waiting[]>()
  for (const one of list) {
    const key = shape(one)
    const group = groups.get(key)
    if (group) group.push(one)
    else groups.set(key, [one])
  }
  return groups
}

/** Tokens of the one side and of the other that stand for the same; those that both sides have stand for themselves. */
class Pairing {
  readonly #there = new Map<string, string>()
  readonly #here = new Map<string, string>()

  constructor(shared: Iterable<string>) {
    for (const one of shared) this.take(one, one)
  }

  /** False when one of them stands for something else already. */
  take(here: string, there: string): boolean {
    if ((this.#there.get(here) ?? there) !== there || (this.#here.get(there) ?? here) !== here) return false
    this.#there.set(here, there)
    this.#here.set(there, here)
    return true
  }

  /** The text with every token as the other side has it, and those not known yet as a star. */
  readonly fromHere = (text: string): string => text.replace(token, (one) => this.#there.get(one) ?? '*')
  readonly fromThere = (text: string): string => text.replace(token, (one) => (this.#here.has(one) ? one : '*'))
}

const most = 20
const shown = (row: Row): string => JSON.stringify(row).slice(0, 600)

/** Pairs off what can belong to nothing else; of twins, by `twins`, any two. Answers how many; what contradicts itself goes to `wrong`. */
function pairOff(table: string, here: Waiting[], there: Waiting[], pairing: Pairing, twins: boolean, wrong: string[]) {
  const others = groupBy(there, ({ fixed, free }) => `${fixed} ${pairing.fromThere(free)}`)
  const done = new Set<Waiting>()
  for (const [shape, group] of groupBy(here, ({ fixed, free }) => `${fixed} ${pairing.fromHere(free)}`)) {
    const match = others.get(shape) ?? []
    if (match.length !== group.length || (group.length > 1 && !twins)) continue
    for (const [index, one] of group.entries()) {
      const other = match[index]
      if (!other) continue
      const named = tokensIn(other.free)
      if (!tokensIn(one.free).every((mine, at) => pairing.take(mine, named[at] ?? '')))
        wrong.push(`${table}: ${shown(one.row)} names other rows than ${shown(other.row)}`)
      done.add(one).add(other)
    }
    if (twins) break
  }
  for (const list of [here, there]) list.splice(0, list.length, ...list.filter((one) => !done.has(one)))
  return done.size
}

/**
 * How two databases differ, a line for each difference; none when there is a way to name what chance made in the one, id by id
 * and digest by digest, so that every row of it is a row of the other. Only in the columns of `free` may a token be another one,
 * and wherever it stands it must be the same other one: a row that refers to the wrong row is a difference.
 */
export function differencesOf(here: Rows, there: Rows, free: Columns): string[] {
  const [ours, theirs] = [sideOf(here, free), sideOf(there, free)]
  const known = allTokens(theirs)
  const pairing = new Pairing([...allTokens(ours)].filter((one) => known.has(one)))
  const tables = [...new Set([...ours.keys(), ...theirs.keys()])]
  const wrong: string[] = []
  const pass = (twins: boolean): boolean => {
    let found = 0
    for (const table of tables) {
      found += pairOff(table, ours.get(table) ?? [], theirs.get(table) ?? [], pairing, twins, wrong)
      if (twins && found > 0) break
    }
    return found > 0
  }
  while (pass(false) || pass(true));
  const left = (side: Side, which: string) =>
    [...side].flatMap(([table, list]) => list.map(({ row }) => `${table}, only in the ${which}: ${shown(row)}`))
  return [...wrong, ...left(ours, 'first'), ...left(theirs, 'second')].sort().slice(0, most)
}
