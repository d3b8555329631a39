import { describe, expect, it } from 'vitest'
import { type KeptMoment, type View, withCopies } from './moment-copies'

const view = (id: string, supersedes: string | null = null, coach = 'ana'): View => ({
  ...{ id, attempt: 'dive', coach, supersedes },
})
const moment = (id: string, observation: string, changes: Partial<KeptMoment> = {}): KeptMoment => ({
  ...{ id, observation, link: 'https://video.example/a', startMs: 500, endMs: 1500, linked: false },
  ...changes,
})
const shown = (views: readonly View[], moments: readonly KeptMoment[]) =>
  withCopies(views, moments)
    .filter((one) => one.shown)
    .map(({ id, copies }) => [id, copies])

describe('the copies of a moment', () => {
  it('are those of the same film and range in all views of its coach, oldest first, through views that had none', () => {
    const views = [view('third', 'second'), view('second', 'first'), view('first')]
    const moments = [moment('a', 'third'), moment('c', 'first'), moment('d', 'first', { endMs: null })]
    expect(withCopies(views, moments).map(({ id, copies }) => [id, copies])).toEqual([
      ['c', ['c', 'a']],
      ['d', ['d']],
      ['a', ['c', 'a']],
    ])
  })

  it('are not those of another coach, attempt, link or range', () => {
    const views = [view('hers'), view('his', null, 'ben'), { ...view('later'), attempt: 'other dive' }]
    const other = { link: 'https://video.example/b' }
    const moments = [
      ...[moment('a', 'hers'), moment('b', 'his'), moment('c', 'later')],
      ...[moment('d', 'hers', other), moment('e', 'hers', { startMs: 501 })],
    ]
    for (const { id, copies } of withCopies(views, moments)) expect(copies).toEqual([id])
  })

  it('are shown once, as the view in force has them; what a correction took out is not shown', () => {
    const views = [view('first'), view('second', 'first')]
    const [kept, out] = [moment('a', 'first'), moment('b', 'first', { startMs: 0 })]
    expect(shown(views, [kept, out, moment('c', 'second')])).toEqual([['c', ['a', 'c']]])
    expect(shown(views.slice(0, 1), [kept, out])).toEqual([
      ['a', ['a']],
      ['b', ['b']],
    ])
  })

  it('leave what was linked beside a view shown after a correction that does not know of it', () => {
    const views = [view('first'), view('second', 'first')]
    const linked = moment('a', 'first', { linked: true })
    expect(shown(views, [linked])).toEqual([['a', ['a']]])
    expect(shown(views, [linked, moment('b', 'second')])).toEqual([['b', ['a', 'b']]])
  })

  it('end where views name each other, and leave out a moment of no known view', () => {
    expect(withCopies([view('first', 'second'), view('second', 'first')], [moment('a', 'first')])).toHaveLength(1)
    expect(withCopies([view('first')], [moment('a', 'unknown')])).toEqual([])
  })
})
