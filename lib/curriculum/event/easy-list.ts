import type { Entry } from './entry'
import type { EventPart } from './model'

/** Of the dives in order of ease the first that may still stand on the list, from a fresh family where one is wanted. */
const nextOf = (byEase: readonly Entry[], used: ReadonlySet<string>, fresh: boolean, families: ReadonlySet<string>) =>
  byEase.find(({ number, family }) => !used.has(number) && !(fresh && families.has(family)))

/**
 * True when taking the easiest dives first already fills every part: families first, capped parts before free ones. A
 * quick proof that some list is legal; false proves nothing, and asks for the exact search.
 */
export function fillsEasily(parts: readonly EventPart[], entries: readonly Entry[]): boolean {
  const byEase = [...entries].sort((a, b) => a.tenths - b.tenths)
  const used = new Set<string>()
  const cappedFirst = [...parts].sort((a, b) => Number(a.difficultyCap === null) - Number(b.difficultyCap === null))
  return cappedFirst.every(({ count, distinctFamilies, difficultyCap }) => {
    const families = new Set<string>()
    let sum = 0
    for (let taken = 0; taken < count; taken++) {
      const next = nextOf(byEase, used, taken < distinctFamilies, families)
      if (!next) return false
      used.add(next.number)
      families.add(next.family)
      sum += next.tenths
    }
    return distinctFamilies <= families.size && sum <= (difficultyCap ?? Number.POSITIVE_INFINITY)
  })
}
