'use client'

import { useState } from 'react'
import type { Mark, MarkKey } from '@/lib/assessment/mark/mark'
import { sayTime } from '@/lib/assessment/mark/wording'
import type { ClipControl } from '../use-clip'
import { type Said, saidOf, useSending } from '../use-sending'
import type { MarkAction, MarksView } from './marks-view'

const noFrame: Said = {
  tone: 'refused',
  text: 'No frame of the film is there yet. Nothing was kept; mark it once it shows.',
}

/** Marking on one clip: the frame that is shown, with what the player learned of how long a frame lasts. */
export function useMarks(clip: ClipControl, marks: MarksView, action: MarkAction) {
  const { said, pending, send } = useSending()
  // The next phase is the one after those on their way too: on a slow network she marks on before the first is answered.
  const [sent, setSent] = useState<readonly MarkKey[]>([])
  const without = (key: MarkKey) => setSent((all) => all.filter((one) => one !== key))
  const markOf = (key: MarkKey): Mark | null => marks.own.find((mark) => mark.key === key) ?? null
  const goTo = ({ atMs, frameUs }: Mark) => clip.goTo(atMs / 1000, frameUs === null ? null : frameUs / 1_000_000)

  const mark = (key: MarkKey) => {
    setSent((all) => [...all, key])
    const ask = async (): Promise<Said> => {
      const still = await clip.hold()
      if (!still) return noFrame
      const atMs = Math.round(still.at * 1000)
      const frameUs = still.frame === null ? null : Math.round(still.frame * 1_000_000)
      return saidOf(await action({ moment: marks.moment, key, atMs, frameUs }), `Kept: ${key} at ${sayTime(atMs)}.`)
    }
    // One that was kept comes back with the marks, and stays counted until then.
    send(ask, (kept) => kept || without(key))
  }
  const takeBack = (key: MarkKey, then: () => void) => {
    without(key)
    const ask = { moment: marks.moment, key, atMs: null, frameUs: null }
    send(
      async () => saidOf(await action(ask), `Taken back: ${key}.`),
      (kept) => kept && then(),
    )
  }

  const next = marks.keys.find((key) => markOf(key) === null && !sent.includes(key)) ?? null
  const digits = marks.keys.slice(0, 9).map((key, index): [string, () => void] => [String(index + 1), () => mark(key)])
  const keys = new Map<string, () => void>([...digits, ['m', () => next && mark(next)]])
  return { said, pending, mark, takeBack, markOf, goTo, next, keys }
}

export type Marking = ReturnType<typeof useMarks>
