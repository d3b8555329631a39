import { v7 } from 'uuid'
import type { DeckItem } from '../../lib/assessment/deck/contract'
import { readStandings } from '../../lib/assessment/store/standings'
import { syncDeck } from '../../lib/assessment/store/sync/sync'
import type { Rating } from '../../lib/curriculum/model'
import { coachScope } from '../../seed/demo/hands'
import { fixedNow } from '../../seed/demo/season'
import { time } from './times'

const minute = 60_000

/** Fifty items as they come after a session without a network: dives of eight divers, each with what was seen of it. */
export async function timeSync(): Promise<void> {
  const scope = await coachScope('marguerite', fixedNow)
  const { curriculum, divers } = await readStandings(scope)
  const pair = curriculum.pairs.get('101C@1m')
  if (!pair) throw new Error('the demo teaches no 101C at 1 m')
  const ratings = Object.fromEntries(pair.criteria.map(({ criterion }) => [criterion.key, 3 as Rating]))
  const device = v7()
  const batch = (at: number): DeckItem[] =>
    Array.from({ length: 25 }, (_, nth): DeckItem[] => {
      const attempt = v7({ msecs: at + nth * minute })
      const diver = divers[nth % 8]?.id ?? ''
      const level = curriculum.levels[pair.level]?.key ?? ''
      return [
        {
          kind: 'attempt',
          id: attempt,
          diver,
          ...pair.holding,
          atLevel: level,
          call: null,
          attemptedAt: at + nth * minute,
          setting: 'training',
          cued: false,
          device,
        },
        {
          kind: 'observation',
          id: v7({ msecs: at + nth * minute + 1 }),
          attempt,
          edition: curriculum.hash,
          observedOn: 'deck',
          observedAt: at + nth * minute,
          ratings,
          restAsExpected: false,
          faults: [],
          note: null,
          moments: [],
          supersedes: null,
        },
      ]
    }).flat()
  await time('a deck sends fifty items of eight divers', 20, async (run) => {
    const at = fixedNow + (run + 2) * 60 * minute
    const answers = await syncDeck(await coachScope('marguerite', at), at, batch(at - 30 * minute))
    if (answers.some(({ result }) => result !== 'accepted')) throw new Error(JSON.stringify(answers[0]))
  })
}
