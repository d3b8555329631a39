import type { Page } from '@playwright/test'
import { v7 as uuidv7 } from 'uuid'
import type { DeckSnapshot } from '../../../lib/assessment/deck/contract'
import { pairKey } from '../../../lib/curriculum/edition/curriculum'
import { indexEdition } from '../../../lib/curriculum/edition/index-edition'
import type { Place } from '../../../lib/curriculum/place'

/** Links of a test's moments: a film of this server, a film that cannot be had, a page about one. */
export const filmLinks = {
  own: '/media/clips/101b-sound.webm',
  file: 'https://films.invalid/gone.mp4',
  page: 'https://films.invalid/watch?v=7',
} as const

/** Pictures a second in our own films. */
export const rate = 60

const fallIn = { skill: 'fall-in', place: 'poolside', atLevel: 'soundings' }

interface Filmed {
  readonly skill: string
  readonly place: string
  readonly atLevel: string
}

/** Every criterion of a skill a 4. */
function allFours({ edition }: DeckSnapshot, what: Filmed): Record<string, number> {
  const pair = indexEdition(edition.document, edition.hash).pairs.get(
    pairKey({ skill: what.skill, place: what.place as Place }),
  )
  return Object.fromEntries((pair?.criteria ?? []).map(({ criterion }) => [criterion.key, 4]))
}

/** A called attempt with a moment for each link, from a coach's device; the ids of its moments. `good`: rated a 4 throughout. */
export async function film<Key extends string>(
  page: Page,
  diver: string,
  links: Readonly<Record<Key, string>>,
  {
    what = fallIn,
    start = 0.5,
    end = 1.5,
    good = false,
  }: { what?: Filmed; start?: number; end?: number; good?: boolean } = {},
): Promise<Record<Key, string>> {
  const keys = Object.keys(links) as Key[]
  const ids = Object.fromEntries(keys.map((key) => [key, uuidv7()])) as Record<Key, string>
  const snapshot: DeckSnapshot = await (await page.request.get('/api/deck/snapshot')).json()
  const now = Date.now()
  const attempt = uuidv7({ msecs: now - 50_000 })
  const at = { diver, ...what, device: uuidv7() }
  const call = uuidv7({ msecs: now - 60_000 })
  const items = [
    { kind: 'call', id: call, ...at, count: 1, calledAt: now - 60_000 },
    {
      kind: 'attempt',
      id: attempt,
      ...at,
      call: { id: call, number: 1 },
      attemptedAt: now - 50_000,
      setting: 'training',
      cued: false,
    },
    {
      kind: 'observation',
      id: uuidv7({ msecs: now - 40_000 }),
      attempt,
      edition: snapshot.edition.hash,
      observedOn: 'deck',
      observedAt: now - 40_000,
      ratings: good ? allFours(snapshot, what) : {},
      restAsExpected: false,
      faults: [],
      note: null,
      moments: keys.map((key) => ({ id: ids[key], link: links[key], start, end })),
      supersedes: null,
    },
  ]
  const answer = await page.request.post('/api/deck/sync', { data: { v: snapshot.v, sentAt: now, items } })
  const answers = (await answer.json()) as { result: string; message?: string }[]
  const refused = answers.find(({ result }) => result !== 'accepted')
  if (refused) throw new Error(refused.message)
  return ids
}

/** The time of the frame that the player shows, in seconds of the film. */
export const shownAt = async (page: Page): Promise<number> =>
  Number(await page.locator('output[data-media-time]').getAttribute('data-media-time'))

/** The number of the frame that is shown at a time. */
export const frameOf = (time: number): number => Math.round(time * rate)
