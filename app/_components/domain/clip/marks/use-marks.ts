'use client'

import type { Mark, MarkKey } from '@/lib/assessment/mark/mark'
import { sayTime } from '@/lib/assessment/mark/wording'
import type { ClipControl } from '../use-clip'
import { useSending } from '../use-sending'
import type { MarkAction, MarksView } from './marks-view'

/** Marking on one clip: the frame that is shown, with what the player learned of how long a frame lasts. */
export function useMarks(clip: ClipControl, marks: MarksView, action: MarkAction) {
  const { said, pending, send } = useSending()
  const markOf = (key: MarkKey): Mark | null => marks.own.find((mark) => mark.key === key) ?? null
  const goTo = ({ atMs, frameUs }: Mark) => void clip.goTo(atMs / 1000, frameUs === null ? null : frameUs / 1_000_000)

  const mark = (key: MarkKey) => {
    clip.pause()
    const atMs = Math.round(clip.shown * 1000)
    const ask = async () => {
      const frame = await clip.learn()
      const frameUs = frame === null ? null : Math.round(frame * 1_000_000)
      return action({ moment: marks.moment, key, atMs, frameUs })
    }
    send(ask, `Kept: ${key} at ${sayTime(atMs)}.`)
  }
  const takeBack = (key: MarkKey) =>
    send(() => action({ moment: marks.moment, key, atMs: null, frameUs: null }), `Taken back: ${key}.`)

  const next = marks.keys.find((key) => markOf(key) === null) ?? null
  const digits = marks.keys.slice(0, 9).map((key, index): [string, () => void] => [String(index + 1), () => mark(key)])
  const keys = new Map<string, () => void>([...digits, ['m', () => next && mark(next)]])
  return { said, pending, mark, takeBack, markOf, goTo, next, keys }
}

export type Marking = ReturnType<typeof useMarks>
