import { facetsOfSkill } from '@/lib/curriculum/edition/attach'
import type { LintCode } from '@/lib/curriculum/lint/problem'
import { drop, eachOf, type Mutate, set } from './mutation'

const headFirstTooSoon: Mutate = (s) => {
  const openedByMove = new Set(
    s.pairs.filter(({ pair }) => pair.prerequisite !== pair.at.prerequisite).map(({ path }) => path),
  )
  return [
    ...s.pairs
      .filter(
        ({ pair, path }) =>
          !openedByMove.has(path) && pair.criteria.some(({ criterion }) => criterion.key === 'hands-locked'),
      )
      .map(({ path }) => set(s, `${path}/prerequisite`, null)),
    ...eachOf(s, 'skills', (skill, path) =>
      skill.key === 'jump-standing' ? [set(s, `${path}/facets/enters`, 'head-first')] : [],
    ),
  ]
}

const backwardsAtPoolside: Mutate = (s) =>
  eachOf(s, 'skills', (skill, path) =>
    skill.facets.enters === 'head-first' && skill.places.some(({ place }) => place === 'poolside')
      ? [set(s, `${path}/facets/direction`, 'reverse'), set(s, `${path}/facets/direction`, 'inward')]
      : [],
  )

const neverFallen: Mutate = (s) =>
  eachOf(s, 'skills', (skill, path) =>
    ['fall-in', 'back-fall-in'].includes(skill.key)
      ? [
          set(s, `${path}/phaseSet`, 'standing'),
          set(s, `${path}/facets/sense`, skill.facets.sense === 'forwards' ? 'backwards' : 'forwards'),
          drop(s, `${path}/facets/sense`),
          drop(s, `${path}/places/${skill.places.length - 1}`),
        ]
      : [],
  )

const withoutParent: Mutate = (s) => {
  const first = { kind: 'signOff', skill: 'jump-standing', place: '1m', atLevel: 'soundings' }
  return s.pairs.flatMap(({ pair, path }) => {
    const { direction, enters, halfSomersaults = 0, halfTwists = 0 } = facetsOfSkill(pair.skill)
    // From 3 m the board move brings the plain dives and the back entries with it, but no somersaults.
    const broughtByMove = pair.at.place !== '1m' && (halfTwists === 0 || halfSomersaults < 3)
    const rests = halfTwists > 0 && halfSomersaults > 0
    const reverse = direction === 'reverse' && enters === 'head-first'
    return (rests || reverse) && !broughtByMove ? [set(s, `${path}/prerequisite`, first)] : []
  })
}

const aroundTheMove: Mutate = (s) =>
  s.pairs.filter(({ pair }) => pair.skill.dive !== null).map(({ path }) => set(s, `${path}/beforeMove`, true))

const unwatched: Mutate = (s) =>
  eachOf(s, 'criteria', (criterion, path) =>
    ['hands-locked', 'upright-entry', 'clear-of-board', 'clear-while-twisting'].includes(criterion.key)
      ? [
          set(s, `${path}/critical`, false),
          set(s, `${path}/appliesTo/match/places`, ['3m']),
          set(s, `${path}/appliesTo/match/families`, ['forward']),
          set(s, `${path}/phase`, 'take-off'),
          drop(s, path),
        ]
      : [],
  )

const blockedReentry: Mutate = (s) =>
  s.document.layOff.flatMap((rule, r) =>
    rule.reentry.flatMap((_, e) => [
      drop(s, `/layOff/${r}/reentry/0`),
      set(s, `/layOff/${r}/reentry/${e}`, { skill: '103C', place: rule.place }),
      set(s, `/layOff/${r}/reentry/${e}/place`, rule.place === '1m' ? '3m' : '1m'),
    ]),
  )

const noSpotter: Mutate = (s) =>
  eachOf(s, 'criteria', (criterion, path) =>
    criterion.key === 'spotter-ready'
      ? [
          set(s, `${path}/statement`, 'Somebody holds both ropes and says yes before the diver moves.'),
          set(s, `${path}/statement`, 'A team-mate who was trained for it holds the ropes.'),
          set(s, `${path}/statement`, 'A spotter holds the ropes.'),
          set(s, `${path}/critical`, false),
          set(s, `${path}/appliesTo/match/places`, ['trampoline-belt']),
          drop(s, path),
        ]
      : [],
  )

/** Changes that make a sound curriculum unsafe, by the problem that has to be named. */
export const safetyMutations = {
  'head-first-too-soon': headFirstTooSoon,
  'poolside-backwards': backwardsAtPoolside,
  'dive-before-fall': neverFallen,
  'parent-missing': withoutParent,
  'dive-before-move': aroundTheMove,
  'safety-unwatched': unwatched,
  'reentry-blocked': blockedReentry,
  'belt-without-spotter': noSpotter,
} as const satisfies Partial<Record<LintCode, Mutate>>
