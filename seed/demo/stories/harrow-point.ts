import type { Story } from './story'

const quick = { fresh: 2.3, learned: 3.5, pace: 7, safe: 3.55 }
const steady = { fresh: 2, learned: 3.2, pace: 10, safe: 3.5 }
const slow = { fresh: 1.3, learned: 2.7, pace: 20, safe: 3.2 }

/** A club without a 3 m board: its divers reach the second level, and the move waits for a board. */
export const harrowPointStories: readonly Story[] = [
  {
    key: 'pia',
    given: 'Pia',
    family: 'Hallorann-Diaz',
    born: '2017-12-19',
    squad: 'cove',
    shows: 'Joined after the new year and is on the way to the first level: the water first, then the board.',
    ability: slow,
    attends: 0.9,
    consentsMissing: true,
    reaches: [
      ['2026-01-19', 'water'],
      ['2026-03-09', 'first board'],
    ],
  },
  {
    key: 'yusuf',
    given: 'Yusuf',
    family: 'Carrow',
    born: '2015-09-14',
    squad: 'cove',
    shows: 'Near the first level: one more call of good jumps from 1 m.',
    ability: { ...slow, fresh: 1.5 },
    attends: 0.8,
    reaches: [
      ['2025-10-06', 'water'],
      ['2026-01-19', 'first board'],
    ],
    leavesOut: ['jump-standing@1m'],
    episodes: [
      {
        on: '2026-03-11',
        pair: 'jump-standing@1m',
        called: true,
        dives: [{}, { 'straight-and-braced': 0 }, { 'straight-and-braced': 0 }],
        note: 'Folds in the air to look for the water. Pick a spot on the far wall.',
      },
      {
        on: '2026-03-14',
        pair: 'jump-standing@1m',
        called: true,
        dives: [{ 'straight-and-braced': 0 }, { 'straight-and-braced': 2 }, { 'straight-and-braced': 0 }],
      },
    ],
  },
  {
    key: 'leilani',
    given: 'Leilani',
    family: 'Strand-Okafor',
    born: '2014-11-02',
    squad: 'headland',
    shows: 'Ready for the second level, and waiting in the queue.',
    ability: steady,
    attends: 0.9,
    reaches: [
      ['2025-08-18', 'water', 'first board'],
      ['2025-11-03', 'walk', 'first dive'],
      ['2026-01-12', 'turn'],
    ],
    waits: ['level:bearings'],
  },
  {
    key: 'bram',
    given: 'Bram',
    family: 'Oyelaran',
    born: '2015-06-25',
    squad: 'cove',
    shows:
      'Held up: the running jump has not come on since before the new year, for the landing on the end of the board.',
    ability: { ...slow, fresh: 1.9, safe: 3.7, marked: { hurdle: -2.2, press: -1.4 } },
    attends: 0.85,
    reaches: [
      ['2025-08-18', 'water', 'first board'],
      ['2025-10-13', 'walk'],
      ['2025-11-24', 'first dive'],
    ],
  },
  {
    key: 'anouk',
    given: 'Anouk',
    family: 'Devereux-Shah',
    born: '2011-10-10',
    squad: 'headland',
    shows: 'Back after two terms abroad: a sign-off has lapsed, and the board is met again from its first steps.',
    ability: quick,
    attends: 1,
    away: [['2025-09-14', '2026-03-08']],
    reaches: [['2025-08-18', 'water', 'first board', 'walk', 'first dive']],
  },
  {
    key: 'tomasz',
    given: 'Tomasz',
    family: 'Quillfeather',
    born: '2012-12-28',
    squad: 'headland',
    shows:
      'Has what the move to 3 m asks, from visits to Saltmarsh; his own club has no such board, so it stays unmet.',
    ability: { ...quick, learned: 3.4 },
    attends: 0.92,
    reaches: [
      ['2025-08-18', 'water', 'first board'],
      ['2025-09-08', 'walk', 'first dive'],
      ['2025-10-20', 'fold'],
      ['2025-12-01', 'height'],
    ],
  },
  {
    key: 'zuri',
    given: 'Zuri',
    family: 'Ekstrand',
    born: '2008-07-07',
    squad: 'headland',
    shows:
      'Took it up late and came far in a winter with one coach: a sign-off stands by override, the next wants a second coach.',
    ability: { ...steady, fresh: 2.2, learned: 3.3 },
    attends: 0.85,
    coachedBy: 'oluwaseun',
    reaches: [
      ['2025-09-01', 'water', 'first board'],
      ['2025-10-13', 'walk', 'first dive'],
      ['2025-12-01', 'turn'],
    ],
    waivers: [
      {
        pair: '101C@1m',
        from: '2025-11-01',
        reason: 'No second coach was at her sessions this autumn. Sound on several days; one looks in spring.',
      },
    ],
  },
]
