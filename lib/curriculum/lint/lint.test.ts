import { describe, expect, it } from 'vitest'
import { anAskedMeasure } from '@/tests/support/asked-measures'
import { anEvent, aPart } from '@/tests/support/dive-events'
import { without, withValue } from '@/tests/support/edit-document'
import { tinyEdition } from '@/tests/support/tiny-edition'
import type { Pointer } from '../edition/pointer'
import type { EditionDocument } from '../model'
import { lint } from './lint'
import type { LintCode } from './problem'

const set = (pointer: Pointer, value: unknown): EditionDocument => withValue(tinyEdition(), pointer, value)
const signOff = (skill: string, place: string, atLevel: string) => ({ kind: 'signOff', skill, place, atLevel })
const trophy = anEvent('3m', [aPart(2)])
const aRise = anAskedMeasure({ what: 'rise', at: 'whole flight' })
const belt = {
  place: 'dry-board-belt',
  level: 'one',
  signer: 'head',
  beforeMove: false,
  prerequisite: null,
  standard: {},
}

describe('the small edition', () => {
  it('has nothing wrong', () => {
    expect(lint(tinyEdition())).toEqual([])
  })
})

describe('each mistake is named where it stands, with what to do', () => {
  it.each<[LintCode, EditionDocument, Pointer, string]>([
    [
      'duplicate-key',
      set('/skills/1/key', 'tread'),
      '/skills/1',
      'skill tread stands twice; give this one another key',
    ],
    ['duplicate-key', set('/levelMap', { two: 'one' }), '/levelMap/two', 'but this edition has a level two'],
    [
      'unknown-key',
      set('/skills/1/places/0/prerequisite/skill', 'treat'),
      '/skills/1/places/0/prerequisite/skill',
      'the prerequisite of jump at 1 m names a skill treat',
    ],
    [
      'unknown-key',
      set('/skills/1/places/0/prerequisite/place', '3m'),
      '/skills/1/places/0/prerequisite/place',
      'tread at 3 m, where this edition does not teach it',
    ],
    [
      'unknown-key',
      set('/levels/2/requirement/of/0/family', 'back'),
      '/levels/2/requirement/of/0',
      'level Three names a board move back to 3m',
    ],
    [
      'unknown-key',
      set('/criteria/0/expects/0/level', 'zero'),
      '/criteria/0/expects/0/level',
      'criterion clear-water names a level zero',
    ],
    [
      'unknown-key',
      set('/layOff/0/reentry/0/place', 'floor'),
      '/layOff/0/reentry/0/place',
      'the lay-off rule for 3m names jump at floor',
    ],
    [
      'drill-missing',
      set('/faults/0/corrections/0', { kind: 'drill', text: 'Again.', drill: { skill: 'jump', place: 'floor' } }),
      '/faults/0/corrections/0/drill',
      'fault hands-apart sends the diver to jump at floor',
    ],
    [
      'cycle',
      set('/skills/0/places/0/prerequisite', signOff('jump', '1m', 'one')),
      '/skills/0/places/0',
      'tread at poolside → jump at 1m → tread at poolside',
    ],
    [
      'unreachable',
      without(tinyEdition(), '/skills/0'),
      '/skills/0/places/0',
      'nobody can reach jump at 1m: it waits for tread at poolside',
    ],
    ['cannot-be-met', set('/levels/1/requirement/n', 4), '/levels/1/requirement/n', 'level Two asks: 4 of only 3'],
    [
      'cannot-be-met',
      set('/standard/successes', 4),
      '/standard',
      'the standard of the programme asks for 4 successes in 3 attempts',
    ],
    [
      'no-level-named',
      without(tinyEdition(), '/boardMoves/0/requirement/of/1/atLevel'),
      '/boardMoves/0/requirement/of/1',
      'asks for line-up at 3 m without a level; write atLevel',
    ],
    [
      'level-mismatch',
      set('/skills/1/places/0/prerequisite/atLevel', 'two'),
      '/skills/1/places/0/prerequisite/atLevel',
      'at level two, which comes later',
    ],
    [
      'level-mismatch',
      set('/boardMoves/0/requirement/of/1/atLevel', 'one'),
      '/boardMoves/0/requirement/of/1/atLevel',
      'but it is taught from two on',
    ],
    [
      'move-misplaced',
      set('/boardMoves/0/from', '3m'),
      '/boardMoves/0/to',
      'goes from 3 m to 3 m; it leads from a board to a higher one',
    ],
    [
      'criterion-without-skill',
      set('/criteria/0/appliesTo/match/families', ['back']),
      '/criteria/0/appliesTo',
      'criterion clear-water matches no skill that has a phase "set-up"',
    ],
    [
      'criterion-without-skill',
      set('/criteria/1/appliesTo', { by: 'skills', skills: ['101C', 'tread'] }),
      '/criteria/1/appliesTo/skills/1',
      'lists tread, which has no phase "entry"',
    ],
    ['fault-unused', set('/criteria/1/faults', []), '/faults/0', 'fault hands-apart is listed by no criterion'],
    [
      'fault-words-unread',
      set('/faults/0/corrections/0/match', { approaches: ['armstand'] }),
      '/faults/0/corrections/0',
      'fault hands-apart says this of skills that never have the fault',
    ],
    [
      'fault-unexplained',
      set('/faults/0/causes', [{ text: 'The grip.', match: { places: ['3m'] } }]),
      '/faults/0/causes',
      'fault hands-apart has none of its causes for 101C at 1 m',
    ],
    [
      'drill-ahead',
      set('/faults/0/corrections/0', { kind: 'drill', text: 'On.', drill: { skill: '101C', place: '3m' } }),
      '/faults/0/corrections/0/drill',
      'fault hands-apart sends line-up at 3 m on to 101C at 3 m, which comes after it',
    ],
    [
      'anchors-alike',
      set('/criteria/0/anchors/2', 'A sound look: the second finds no fault.'),
      '/criteria/0/anchors/3',
      'the anchors for 2 and 3 share most of their words',
    ],
    [
      'critical-below-3',
      set('/criteria/0/expects/0/level', 'two'),
      '/criteria/0/expects',
      'critical criterion clear-water expects less than 3 at One',
    ],
    [
      'expectation-falls',
      set('/criteria/4/expects/1/rating', 1),
      '/criteria/4/expects',
      'expects 2 at one and only 1 at three',
    ],
    [
      'no-critical-criterion',
      set('/criteria/0/critical', false),
      '/skills/0/places/0',
      'tread at poolside has no critical criterion',
    ],
    [
      'head-first-too-soon',
      set('/skills/3/places/0/prerequisite', null),
      '/skills/3/places/0',
      '101C at 1 m goes in head first, and nothing feet-first at that place has to come before it',
    ],
    [
      'poolside-backwards',
      withValue(set('/skills/2/facets/direction', 'inward'), '/skills/2/places/0/place', 'poolside'),
      '/skills/2/places/0',
      'teach inward head-first from a board only',
    ],
    [
      'dive-before-fall',
      set('/skills/2/facets/sense', 'backwards'),
      '/skills/3/places/1',
      '101C at 3 m turns forwards, and no fall-in that does has to come before it',
    ],
    [
      'reentry-blocked',
      set('/layOff/0/reentry/0/place', '1m'),
      '/layOff/0/reentry/0',
      'the first steps are met there, not as jump at 1 m',
    ],
    [
      'reentry-blocked',
      set('/layOff/0/reentry/0/skill', 'line-up'),
      '/layOff/0/reentry/0',
      'line-up at 3 m waits for jump at 3 m, which stays closed',
    ],
    [
      'parent-missing',
      set('/skills/4/dive', '5132D'),
      '/skills/4/places/0',
      'the same somersault without a twist does not have to come before it',
    ],
    ['parent-missing', set('/skills/3/dive', '301C'), '/skills/3/places/0', 'no back entry has to come before it'],
    [
      'dive-before-move',
      set('/skills/3/places/1/beforeMove', true),
      '/skills/3/places/1/beforeMove',
      '101C at 3 m is a dive and is marked beforeMove',
    ],
    [
      'safety-unwatched',
      set('/criteria/1/critical', false),
      '/skills/2/places/0',
      'line-up at 3 m has no critical criterion for the entry',
    ],
    [
      'safety-unwatched',
      set('/criteria/3/critical', false),
      '/skills/3/places/0',
      '101C at 1 m has no critical criterion for the distance from the board',
    ],
    [
      'belt-without-spotter',
      set('/skills/0/places/1', belt),
      '/skills/0/places/1',
      'tread at dry board, in the belt is belt work',
    ],
    [
      'certainty-out-of-reach',
      set('/skills/0/places/0/standard/certainty', { rate: 0.7, at: 0.9, over: 4 }),
      '/skills/0/places/0/standard/certainty',
      '4 faultless attempts give 0.831',
    ],
    [
      'recheck-too-hard',
      set('/standard/recheck', { successes: 3, of: 4 }),
      '/standard',
      'the recheck of the programme (3 of 4) is harder than its standard (2 of 3)',
    ],
    ['duplicate-key', set('/events', [trophy, trophy]), '/events/1', 'event trophy stands twice'],
    [
      'unknown-key',
      set('/levels/0/requirement', { kind: 'diveList', event: 'cup' }),
      '/levels/0/requirement/event',
      'level One names an event cup',
    ],
    [
      'no-legal-list',
      set('/events', [{ ...trophy, ageBand: { from: 12, to: 11 } }]),
      '/events/0/ageBand/to',
      'from 12 to 11; swap them',
    ],
    [
      'no-legal-list',
      set('/events', [{ ...trophy, parts: [aPart(2, 3)] }]),
      '/events/0/parts/0/distinctFamilies',
      'asks for 3 families in 2 dives',
    ],
    [
      'no-legal-list',
      set('/events', [{ ...trophy, parts: [aPart(2, 2)] }]),
      '/events/0/parts/0/distinctFamilies',
      'dives of 2 families and this edition teaches 1 at 3 m',
    ],
    [
      'no-legal-list',
      set('/events', [{ ...trophy, parts: [aPart(3)] }]),
      '/events/0/parts',
      'asks for 3 different dives and this edition teaches 2 at 3 m',
    ],
    [
      'no-legal-list',
      set('/events', [{ ...trophy, parts: [aPart(2, 1, 28)] }]),
      '/events/0/parts/0/difficultyCap',
      '2.8 is allowed and the easiest dives come to 2.9; raise it',
    ],
    [
      'no-legal-list',
      set('/events', [{ ...trophy, parts: [aPart(1, 1, 14), aPart(1, 1, 14)] }]),
      '/events/0/parts',
      'caps that can be kept one by one and not together',
    ],
    [
      'measure-bands',
      set('/criteria/3/measure', anAskedMeasure({ bands: { ...anAskedMeasure().bands, 3: { least: 0.4 } } })),
      '/criteria/3/measure/bands/3',
      'criterion safe-distance: the band of 3 reaches beyond that of 2, so that a better value would earn less',
    ],
    [
      'measure-bands',
      set('/criteria/3/measure', anAskedMeasure({ bands: { ...anAskedMeasure().bands, 4: { least: 2, most: 1 } } })),
      '/criteria/3/measure/bands/4',
      'the band of 4 begins at 2 and ends at 1; swap them',
    ],
    [
      'measure-bands',
      set('/criteria/3/measure', anAskedMeasure({ bands: { ...anAskedMeasure().bands, 1: { least: -1 } } })),
      '/criteria/3/measure/bands/1',
      'names -1, and distanceFromTip lies between 0 and 10 metres',
    ],
    [
      'measure-misplaced',
      set('/criteria/3/measure', anAskedMeasure({ at: 'press' })),
      '/criteria/3/measure/at',
      'distanceFromTip says nothing at "press"; take it at highest point, passing, come-out, entry instead',
    ],
    [
      'measure-misplaced',
      set('/criteria/1/measure', anAskedMeasure({ what: 'hipAngle', at: 'come-out', unit: 'degrees' })),
      '/criteria/1/measure/at',
      'taken at "come-out", which line-up at 3 m does not have',
    ],
    [
      'measure-misplaced',
      withValue(set('/skills/1/places/0/place', 'poolside'), '/criteria/2/measure', aRise),
      '/criteria/2/measure/what',
      'rise needs a board over water, and jump at poolside has none',
    ],
    [
      'measure-misplaced',
      set('/criteria/5/measure', anAskedMeasure({ what: 'bodyTilt', at: 'take-off', unit: 'degrees' })),
      '/criteria/5/measure/at',
      'bodyTilt says nothing at "take-off"',
    ],
    [
      'distance-unguarded',
      set('/criteria/4/measure', anAskedMeasure()),
      '/criteria/4/measure/what',
      'a distance from the board is critical; mark the criterion so',
    ],
    [
      'distance-unguarded',
      set('/criteria/3/measure', anAskedMeasure({ bands: { ...anAskedMeasure().bands, 1: { most: 3 } } })),
      '/criteria/3/measure/bands/1',
      'the band of 1 has no least, so that no distance would be too near',
    ],
    ['dive-impossible-here', set('/skills/4/dive', '107A'), '/skills/4/places/0/place', '107A cannot be done at 3 m'],
    ['dive-misdescribed', set('/skills/4/family', 'back'), '/skills/4/family', 'but 103C is a forward dive'],
    [
      'dive-misdescribed',
      set('/skills/4/phaseSet', 'standing'),
      '/skills/4/phaseSet',
      'a running 103C has the phases "running"',
    ],
  ])('%s (%#)', (code, document, path, message) => {
    expect(lint(document)).toContainEqual({ code, path, message: expect.stringContaining(message) })
  })
})

describe('what is not a mistake', () => {
  it('is a feet-first skill asked for only by way of the board move', () => {
    const codes = lint(set('/skills/3/places/1/prerequisite', null)).map((problem) => problem.code)
    expect(codes).not.toContain('head-first-too-soon')
  })

  it('is belt work whose requirement names a trained spotter', () => {
    const reason = 'With a trained spotter on the ropes.'
    const spotted = { ...belt, prerequisite: { ...signOff('tread', 'poolside', 'one'), reason } }
    expect(lint(set('/skills/0/places/1', spotted)).map((problem) => problem.code)).not.toContain(
      'belt-without-spotter',
    )
  })

  it('is an event that the dives of the edition fit just', () => {
    expect(lint(set('/events', [{ ...trophy, parts: [aPart(2, 1, 29)] }]))).toEqual([])
  })

  it('is a distance of a critical criterion, or a rise from a board', () => {
    expect(lint(set('/criteria/3/measure', anAskedMeasure()))).toEqual([])
    expect(lint(set('/criteria/2/measure', aRise))).toEqual([])
  })

  it('is one way out of several that leads nowhere', () => {
    const ways = { kind: 'any', of: [signOff('tread', 'poolside', 'one'), signOff('nobody', '1m', 'one')] }
    const codes = lint(set('/skills/1/places/0/prerequisite', ways)).map((problem) => problem.code)
    expect(codes).toEqual(['unknown-key'])
  })
})
