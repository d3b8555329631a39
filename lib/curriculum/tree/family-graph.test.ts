import { describe, expect, it } from 'vitest'
import { readCurriculum } from '@/seed/read-curriculum'
import { tinyEdition } from '@/tests/support/tiny-edition'
import { walkPath } from '@/tests/support/walk-path'
import { indexEdition } from '../edition/index-edition'
import type { SkillFamily } from '../model'
import { placeFacts } from '../place'
import { prerequisiteGraph } from './cycles'
import { drawFamily } from './draw-family'
import { familyGraph, listFamilies } from './family-graph'
import { listOpened } from './opens'

const { document, problems } = readCurriculum('seed/curriculum')
if (!document) throw new Error(problems.map(({ message }) => message).join('\n'))
const curriculum = indexEdition(document, 'seed')
const families = listFamilies(curriculum)

describe('the graph of a family', () => {
  const graph = familyGraph(curriculum, 'forward')
  const say = ({ from, to }: { from: string; to: string }) => `${from} → ${to}`

  it('holds every pair and board move of the family, and ports to what they rest on elsewhere', () => {
    const own = [...curriculum.pairs.values()].filter(({ skill }) => skill.family === 'forward')
    expect(graph.nodes.filter(({ kind }) => kind === 'pair').map(({ key }) => key)).toEqual(own.map(({ key }) => key))
    expect(graph.nodes.filter(({ kind }) => kind === 'move').map(({ key }) => key)).toEqual(['move:forward:3m'])
    const ports = graph.nodes.filter(({ kind }) => kind === 'port').map(({ key }) => key)
    expect(ports).toContain('takes-turn@1m')
    expect(ports).toContain('level:soundings')
  })
  it('leads a dive at a higher board over its board move', () => {
    expect(graph.edges.map(say)).toContain('move:forward:3m → 101B@3m')
    expect(graph.edges.map(say)).toContain('101C@1m → move:forward:3m')
  })
  it('draws no edge that another way says as well, and loses no way', () => {
    const drawn = graph.drawn.map(say)
    expect(drawn).not.toContain('move:forward:3m → 101B@3m')
    expect(drawn).toContain('move:forward:3m → 101C@3m')
    const waysTo = (key: string): string[] =>
      graph.drawn.filter(({ to }) => to === key).flatMap(({ from }) => [from, ...waysTo(from)])
    for (const { from, to } of graph.edges) expect(waysTo(to), `${from} → ${to}`).toContain(from)
  })
  it('keeps an edge that only one of two ways goes round', () => {
    const any = indexEdition(
      tinyEdition({
        skills: tinyEdition().skills.map((skill) => ({
          ...skill,
          places: skill.places.map((at) =>
            skill.key === '101C' && at.place === '1m'
              ? {
                  ...at,
                  prerequisite: {
                    kind: 'any',
                    of: [
                      { kind: 'signOff', skill: 'tread', place: 'poolside' },
                      { kind: 'signOff', skill: 'jump', place: '1m' },
                    ],
                  },
                }
              : at,
          ),
        })),
      }),
      'any',
    )
    expect(familyGraph(any, 'forward').drawn.map(say)).toContain('tread@poolside → 101C@1m')
  })
})

describe('what a target opens', () => {
  it('is whatever names it among its conditions', () => {
    expect(listOpened(curriculum, 'move:forward:3m')).toContain('101C@3m')
    expect(listOpened(curriculum, '101C@1m')).toEqual(
      expect.arrayContaining(['101B@1m', 'level:bearings', 'move:forward:3m']),
    )
    const graph = prerequisiteGraph(curriculum)
    for (const key of graph.keys())
      for (const opened of listOpened(curriculum, key)) expect(graph.get(opened), opened).toContain(key)
  })
})

describe.each(families)('the drawing of the %s family', (family: SkillFamily) => {
  const drawing = drawFamily(curriculum, family)

  it('places every pair of the family once, in the band of its place', () => {
    const own = [...curriculum.pairs.values()].filter(({ skill }) => skill.family === family)
    const placed = drawing.nodes.filter(({ node }) => node.kind === 'pair')
    expect(placed.map(({ node }) => node.key)).toEqual(own.map(({ key }) => key))
    for (const { node, label, y } of drawing.nodes) {
      const band = drawing.bands.find(({ place }) => place === node.place)
      expect(y - label.above, node.key).toBeGreaterThanOrEqual(band?.top ?? Number.NaN)
      expect(y + label.below, node.key).toBeLessThanOrEqual(band?.bottom ?? Number.NaN)
    }
  })
  it('lays no label over another and no label over the water', () => {
    const boxes = drawing.nodes.map(({ node, label, x, y }) => ({
      key: node.key,
      left: x,
      right: x + label.width,
      top: y - label.above,
      bottom: y + label.below,
    }))
    for (const [index, a] of boxes.entries()) {
      if (drawing.water) expect(a.bottom <= drawing.water.top || a.top >= drawing.water.bottom, a.key).toBe(true)
      for (const b of boxes.slice(index + 1)) {
        const apart = a.right <= b.left || b.right <= a.left || a.bottom <= b.top || b.bottom <= a.top
        expect(apart, `${a.key} and ${b.key}`).toBe(true)
      }
    }
  })
  it('runs every edge rightwards, into its node and under no other label', () => {
    const at = new Map(drawing.nodes.map((drawn) => [drawn.node.key as string, drawn]))
    expect(drawing.links).toHaveLength(drawing.graph.drawn.length)
    for (const { from, to, path } of drawing.links) {
      const points = walkPath(path)
      expect(points.at(-1)?.y, `${from} → ${to}`).toBe(at.get(to)?.y)
      const back = points.slice(1).filter(({ x }, index) => x < (points[index]?.x ?? 0) - 0.01)
      expect(back, `${from} → ${to}`).toEqual([])
      const crossed = drawing.nodes.filter(
        ({ node, label, x, y }) =>
          node.key !== from &&
          points.some((p) => p.x > x && p.x < x + label.width && p.y > y - label.above && p.y < y + label.below),
      )
      expect(
        crossed.map(({ node }) => node.key),
        `${from} → ${to}`,
      ).toEqual([])
    }
  })
  it('has the boards over the water, the highest first, and the deck under it', () => {
    const boards = drawing.bands.map(({ place }) => placeFacts[place].board)
    expect(boards).toEqual([...boards].sort((a, b) => Number(b) - Number(a)))
    const heights = drawing.bands.flatMap(({ place, board }) => (board ? [placeFacts[place].height ?? 0] : []))
    expect(heights).toEqual([...heights].sort((a, b) => b - a))
  })
  it('is the same each time', () => expect(drawFamily(curriculum, family)).toEqual(drawing))
})
