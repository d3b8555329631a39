import type { Acts } from './desk'

/** Does what several people do at the same time, one act after the other, the earliest first; of two at one time in order given. */
export async function doInOrder(people: readonly Acts[]): Promise<void> {
  const next = await Promise.all(people.map(async (acts) => ({ acts, at: await acts.next() })))
  for (;;) {
    const waiting = next.filter((one) => !one.at.done)
    const first = waiting.reduce<(typeof next)[number] | null>(
      (earliest, one) => (earliest && timeOf(earliest.at) <= timeOf(one.at) ? earliest : one),
      null,
    )
    if (!first) return
    first.at = await first.acts.next()
  }
}

const timeOf = (next: IteratorResult<number, void>): number => next.value ?? Number.POSITIVE_INFINITY
