import { describe, expect, it } from 'vitest'
import { readCurriculumFolder } from '@/seed/read-curriculum'
import { indexEdition } from '../edition/index-edition'
import { phaseSets } from '../model'
import { guideOf, stageAt } from './guide'

const { document } = readCurriculumFolder('seed/curriculum')
if (document === null) throw new Error('the demo curriculum cannot be read')
const curriculum = indexEdition(document, 'demo')
const pairs = [...curriculum.pairs.values()]
const guides = pairs.map((pair) => ({ pair, guide: guideOf(curriculum, pair) }))

const getPair = (key: `${string}@${'1m' | 'floor'}`) => {
  const pair = curriculum.pairs.get(key)
  if (!pair) throw new Error(`the demo does not teach ${key}`)
  return pair
}

// The laws of a guide, over every (skill, place) of the demo's edition.
describe('a guide', () => {
  it('is there for every pair, with a stage for the level that teaches it and for the highest', () => {
    expect(guides.length).toBeGreaterThan(150)
    for (const { pair, guide } of guides) {
      expect(guide.stages[0]?.first, pair.key).toBe(pair.level)
      expect(guide.stages.at(-1)?.last, pair.key).toBe(curriculum.levels.length - 1)
      for (const [index, stage] of guide.stages.entries())
        expect(stage.first, pair.key).toBe((guide.stages[index - 1]?.last ?? pair.level - 1) + 1)
    }
  })

  it('asks each level that teaches the pair for what the edition expects there, once, in the words of its anchor', () => {
    let asked = 0
    for (const { pair, guide } of guides)
      for (const { criterion, expects } of pair.criteria) {
        const found = guide.phases.flatMap(({ criteria }) => criteria).filter((one) => one.criterion === criterion)
        expect(found, `${pair.key} ${criterion.key}`).toHaveLength(1)
        for (let level = pair.level; level < curriculum.levels.length; level++) {
          const stage = stageAt(guide, level)
          const covering = (found[0]?.steps ?? []).filter(({ from, until }) => from <= stage && stage <= until)
          const expected = expects[level] ?? 0
          const seen = covering.map(({ rating, anchor }) => ({ rating, anchor }))
          expect(seen).toEqual(expected > 0 ? [{ rating: expected, anchor: criterion.anchors[expected] }] : [])
          asked += expected > 0 ? 1 : 0
        }
      }
    expect(asked).toBeGreaterThan(4_500)
  })

  it('invents nothing: its criteria, anchors and faults are the pair’s own, each once, in the order of the phases', () => {
    for (const { pair, guide } of guides) {
      const criteria = guide.phases.flatMap((phase) => phase.criteria)
      expect(criteria.map(({ criterion }) => criterion.key)).toEqual(
        pair.criteria.map(({ criterion }) => criterion.key),
      )
      for (const { criterion, steps, others } of criteria) {
        const said = [...steps, ...others].map(({ rating, anchor }) => [rating, anchor])
        expect(said.sort()).toEqual(criterion.anchors.map((anchor, rating) => [rating, anchor]))
      }
      const faults = guide.phases.flatMap((phase) => phase.faults.map(({ key }) => key))
      expect(faults).toEqual([...new Set(pair.criteria.flatMap(({ criterion }) => criterion.faults))])
      const order: readonly string[] = phaseSets[pair.skill.phaseSet]
      const places = guide.phases.map(({ phase }) => order.indexOf(phase))
      expect(places).toEqual([...places].sort((a, b) => a - b))
    }
  })

  it('has steps that rise, and stages that each ask something new', () => {
    for (const { pair, guide } of guides) {
      const steps = guide.phases.flatMap(({ criteria }) => criteria.flatMap((one) => [one.steps]))
      for (const own of steps)
        for (const [index, step] of own.entries())
          expect(step.rating, pair.key).toBeGreaterThan(own[index - 1]?.rating ?? 0)
      for (let stage = 1; stage < guide.stages.length; stage++)
        expect(
          steps.flat().some(({ from }) => from === stage),
          `${pair.key} stage ${stage}`,
        ).toBe(true)
    }
  })

  it('reads as the edition is written: an inward dive from the level that teaches it', () => {
    const guide = guideOf(curriculum, getPair('401B@1m'))
    expect(guide.phases.map(({ phase }) => phase)).toEqual(phaseSets.standing)
    const arms = guide.phases
      .flatMap(({ criteria }) => criteria)
      .find(({ criterion }) => criterion.key === 'arms-with-board')
    expect(arms?.steps).toEqual([
      {
        from: 0,
        until: guide.stages.length - 1,
        rating: 3,
        anchor: 'Within half an hour of it at the lowest point, elbows straight.',
      },
    ])
    expect(arms?.others.map(({ rating }) => rating)).toEqual([0, 1, 2, 4])
  })
})

describe('the stage of a level', () => {
  it('is the one it falls into, and the first for a level below the one that teaches the pair', () => {
    const guide = guideOf(curriculum, getPair('401B@1m'))
    expect(stageAt(guide, 0)).toBe(0)
    expect(stageAt(guide, curriculum.levels.length - 1)).toBe(guide.stages.length - 1)
  })
})
