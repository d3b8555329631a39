import type { PairKey } from '@/lib/curriculum/edition/curriculum'

/** What a coach means to watch in one squad on one day: her own list, on which nothing rests. */
export interface DayPlan {
  readonly squad: string
  /** Calendar day of this phone, `2026-03-07`. */
  readonly day: string
  /** Divers who are here. */
  readonly here: readonly string[]
  /** By diver; also of those who are not here, in case they come. */
  readonly watch: Readonly<Record<string, readonly PairKey[]>>
}

/** How many plans a phone remembers. */
const remembered = 40

/** The calendar day of an instant on this phone. */
export function dayOf(instant: number): string {
  const date = new Date(instant)
  const two = (value: number) => String(value).padStart(2, '0')
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`
}

/** Everybody is here, and nothing is chosen. */
export const newPlan = (squad: string, day: string, members: readonly string[]): DayPlan => ({
  squad,
  day,
  here: members,
  watch: {},
})

/** The plan with a diver ticked or not. */
export const withHere = (plan: DayPlan, diver: string, here: boolean): DayPlan => ({
  ...plan,
  here: here ? [...new Set([...plan.here, diver])] : plan.here.filter((other) => other !== diver),
})

/** The plan with a pair to be watched, or not, of some divers. */
export function withWatch(plan: DayPlan, divers: readonly string[], pair: PairKey, watch: boolean): DayPlan {
  const changed = divers.map((diver) => {
    const rest = (plan.watch[diver] ?? []).filter((other) => other !== pair)
    return [diver, watch ? [...rest, pair] : rest]
  })
  return { ...plan, watch: { ...plan.watch, ...Object.fromEntries(changed) } }
}

/** An earlier plan for another day: what was watched of those who are in the squad now; who is here is ticked anew. */
export const copied = (earlier: DayPlan, day: string, members: readonly string[]): DayPlan => ({
  ...newPlan(earlier.squad, day, members),
  watch: Object.fromEntries(Object.entries(earlier.watch).filter(([diver]) => members.includes(diver))),
})

/** The plan of a squad for a day; null when there is none. */
export const findPlan = (plans: readonly DayPlan[], squad: string, day: string): DayPlan | null =>
  plans.find((plan) => plan.squad === squad && plan.day === day) ?? null

/** The newest plan of a squad before a day; null when there is none. */
export const findEarlier = (plans: readonly DayPlan[], squad: string, day: string): DayPlan | null =>
  plans.filter((plan) => plan.squad === squad && plan.day < day).sort((a, b) => (a.day < b.day ? 1 : -1))[0] ?? null

/** The plans with this one in the place of the squad's for that day; the oldest go. */
export const withPlan = (plans: readonly DayPlan[], plan: DayPlan): readonly DayPlan[] =>
  [plan, ...plans.filter((other) => other.squad !== plan.squad || other.day !== plan.day)]
    .sort((a, b) => (a.day < b.day ? 1 : -1))
    .slice(0, remembered)
