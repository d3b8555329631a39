import type { PairKey } from '../../lib/curriculum/edition/curriculum'

/** What the coaches of this coast work on together, in the order in which they take it up. */
export const stageKeys = [
  'water',
  'first board',
  'walk',
  'first dive',
  'turn',
  'fold',
  'height',
  'belt',
  'high dive',
  'high fold',
  'one and a half',
] as const
export type StageKey = (typeof stageKeys)[number]

export interface Stage {
  /** The level at which the stage wants its skills signed. */
  readonly level: string
  readonly pairs: readonly PairKey[]
}

export const stages: Readonly<Record<StageKey, Stage>> = {
  water: {
    level: 'soundings',
    pairs: [
      'deep-water@poolside',
      'takes-turn@poolside',
      'line-up@floor',
      'jump-standing@poolside',
      'push-glide@poolside',
      'kneeling-fall-in@poolside',
      'fall-in@poolside',
    ],
  },
  'first board': {
    level: 'soundings',
    pairs: ['takes-turn@1m', 'shapes@floor', 'jump-standing@1m', 'hurdle@floor', 'tuck-jump@1m', 'fall-in@1m'],
  },
  walk: {
    level: 'bearings',
    pairs: ['hurdle@dry-board', 'press@dry-board', 'approach@dry-board', 'jump-running@1m'],
  },
  'first dive': { level: 'bearings', pairs: ['fall-in@1m', '101C-standing@1m', '101C@1m'] },
  turn: { level: 'bearings', pairs: ['tuck-jump@1m', '102C@1m'] },
  fold: { level: 'bearings', pairs: ['shapes@floor', '101B@1m'] },
  height: {
    level: 'bearings',
    pairs: ['takes-turn@3m', 'jump-standing@1m', 'jump-standing@3m', 'jump-running@3m', 'fall-in@1m', 'fall-in@3m'],
  },
  belt: { level: 'bearings', pairs: ['shapes@floor', 'press@dry-board', 'somersault-belt@dry-board-belt'] },
  'high dive': { level: 'plumb', pairs: ['101C@3m'] },
  'high fold': { level: 'plumb', pairs: ['101B@3m'] },
  'one and a half': { level: 'plumb', pairs: ['103C@1m'] },
}
